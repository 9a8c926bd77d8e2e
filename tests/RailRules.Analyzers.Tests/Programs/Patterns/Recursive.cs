namespace Programs.Patterns.Recursive;

/// <summary>An expression tree evaluated and printed by patterns.</summary>
public static class P
{
    private static readonly Node Tree = new Add(new Number(2), new Multiply(new Number(3), new Negate(new Number(4))));
    public static readonly double Value = Evaluate(Tree);
    public static readonly string Text = Print(Tree);
    public static readonly Node Simplified = Simplify(new Add(new Multiply(new Number(1), new Number(7)), new Number(0)));
    public static readonly string SimplifiedText = Simplified.ToString();

    private static double Evaluate(Node node) => node switch
    {
        Number(var value) => value,
        Add(var left, var right) => Evaluate(left) + Evaluate(right),
        Multiply { Left: var left, Right: var right } => Evaluate(left) * Evaluate(right),
        Negate(var inner) => -Evaluate(inner),
        _ => throw new InvalidOperationException(),
    };

    private static string Print(Node node) => node switch
    {
        Number n => $"{n.Value}",
        Add a => $"({Print(a.Left)} + {Print(a.Right)})",
        Multiply m => $"{Print(m.Left)} * {Print(m.Right)}",
        Negate n => $"-{Print(n.Inner)}",
        _ => "?",
    };

    private static Node Simplify(Node node) => node switch
    {
        Add(var x, Number(0)) => Simplify(x),
        Multiply(Number(1), var x) => Simplify(x),
        Multiply(_, Number(0)) => new Number(0),
        _ => node,
    };
}

public abstract record Node;

public sealed record Number(double Value) : Node;

public sealed record Add(Node Left, Node Right) : Node;

public sealed record Multiply(Node Left, Node Right) : Node;

public sealed record Negate(Node Inner) : Node;
