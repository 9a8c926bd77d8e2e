namespace Programs.Classes.ConditionalLogicalOperators;

/// <summary>&& and || over a user type with true and false.</summary>
public static class P
{
    public static readonly string And = Run(new(1), new(2));
    public static readonly string Short = Run(new(0), new(2));
    public static readonly string Or = RunOr(new(1), new(2)) + RunOr(new(0), new(2));

    private static string Run(Tri a, Tri b)
    {
        var log = "";
        Tri T(Tri t)
        {
            log += t.Value;
            return t;
        }

        var result = T(a) && T(b);
        return $"{log}={result.Value}";
    }

    private static string RunOr(Tri a, Tri b)
    {
        var log = "";
        Tri T(Tri t)
        {
            log += t.Value;
            return t;
        }

        return (T(a) || T(b)) ? log + "yes" : log + "no";
    }
}

public sealed class Tri(int value)
{
    public int Value => value;

    public static Tri operator &(Tri a, Tri b) => new(a.Value & b.Value);

    public static Tri operator |(Tri a, Tri b) => new(a.Value | b.Value);

    public static bool operator true(Tri a) => a.Value != 0;

    public static bool operator false(Tri a) => a.Value == 0;
}
