namespace Programs.Functions.Params;

/// <summary>Params arrays, empty, expanded and passed through.</summary>
public static class P
{
    public static readonly int Expanded = Sum(1, 2, 3);
    public static readonly int Empty = Sum();
    public static readonly int Through = Sum([4, 5]);
    public static readonly int Array = Sum(new[] { 6, 7 });
    public static readonly string Objects = Join("-", 1, 'x', null, 2.5);
    public static readonly string Mixed = Join(":", new object[] { "a", "b" });
    public static readonly int Overload = Pick(1) * 100 + Pick(1, 2) * 10 + Pick(1, 2, 3);

    private static int Sum(params int[] values)
    {
        var sum = values.Length * 1000;
        foreach (var value in values)
            sum += value;
        return sum;
    }

    private static string Join(string separator, params object?[] items) => string.Join(separator, items.Select(i => i ?? "null"));

    private static int Pick(int a) => 1;

    private static int Pick(int a, int b) => 2;

    private static int Pick(params int[] values) => 3;
}
