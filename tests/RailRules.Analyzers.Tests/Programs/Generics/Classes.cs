namespace Programs.Generics.Classes;

/// <summary>Generic classes, static members per type, nested generics.</summary>
public static class P
{
    public static readonly string Texts = Use();
    public static readonly Pair<int, string> Swapped = new Pair<string, int>("a", 1).Swap();
    public static readonly int Nested = new Stack<Stack<int>>().Push(new Stack<int>().Push(5)).Pop().Pop();
    public static readonly Option<double> Some = Option<double>.Some(2.5).Map(x => x * 2);
    public static readonly double Or = Option<double>.None.Or(-1);

    private static string Use()
    {
        var stack = new Stack<string>().Push("a").Push("b");
        return stack.Pop() + stack.Pop() + stack.Count;
    }
}

public sealed record Pair<TA, TB>(TA First, TB Second)
{
    public Pair<TB, TA> Swap() => new(Second, First);
}

public sealed class Stack<T>
{
    private readonly List<T> items = [];

    public int Count => items.Count;

    public Stack<T> Push(T item)
    {
        items.Add(item);
        return this;
    }

    public T Pop()
    {
        var item = items[^1];
        items.RemoveAt(items.Count - 1);
        return item;
    }
}

public readonly struct Option<T>
{
    private readonly T value;

    private Option(T value)
    {
        this.value = value;
        HasValue = true;
    }

    public static Option<T> None => default;

    public bool HasValue { get; }

    public static Option<T> Some(T value) => new(value);

    public Option<TOut> Map<TOut>(Func<T, TOut> how) => HasValue ? Option<TOut>.Some(how(value)) : Option<TOut>.None;

    public T Or(T other) => HasValue ? value : other;
}
