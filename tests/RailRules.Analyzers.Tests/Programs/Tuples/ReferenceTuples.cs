namespace Programs.Tuples.ReferenceTuples;

/// <summary>System.Tuple objects.</summary>
public static class P
{
    private static readonly Tuple<int, string> Pair = Tuple.Create(1, "one");
    public static readonly int First = Pair.Item1;
    public static readonly bool Equal = Pair.Equals(Tuple.Create(1, "one"));
    public static readonly string Text = Pair.ToString();
    public static readonly (int, string) AsValue = Pair.ToValueTuple();
    public static readonly Tuple<double, int> New = new(1.5, 2);
}
