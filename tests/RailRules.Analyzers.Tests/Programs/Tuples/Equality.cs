namespace Programs.Tuples.Equality;

/// <summary>Tuples compare item by item, and stop early.</summary>
public static class P
{
    private static readonly (int, string) A = (1, "x");
    private static readonly (long, string) B = (1, "x");
    public static readonly bool Equal = A == B;
    public static readonly bool NotEqual = A != (1, "y");
    public static readonly bool Nested = ((1, 2), 3) == ((1, 2), 3);
    public static readonly bool Lifted = ((int?)null, 1) == (null, 1);
    public static readonly bool ByEquals = A.Equals((1, "x"));
    public static readonly int Compared = (1, 2).CompareTo((1, 3));
    public static readonly string Evaluation = Run();
    public static readonly bool NaN = (double.NaN, 1) == (double.NaN, 1);
    public static readonly bool NaNEquals = (double.NaN, 1).Equals((double.NaN, 1));

    private static string Run()
    {
        var log = "";
        int T(string name, int value)
        {
            log += name;
            return value;
        }

        var same = (T("a", 1), T("b", 2)) == (T("c", 9), T("d", 2));
        return $"{log} {same}";
    }
}
