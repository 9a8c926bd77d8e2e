namespace Programs.Tuples.EqualityOfMixed;

/// <summary>Tuples of different numeric types are compared as their elements are.</summary>
public static class P
{
    private static readonly int Large = 16777217;
    private static readonly float Single = 16777216f;
    public static readonly bool IntFloat = (Large, 1) == (Single, 1L);
    public static readonly bool IntDouble = (Large, 1) == ((double)Single, 1);
    public static readonly bool LongDouble = (9007199254740993L, 1) == (9007199254740992.0, 1);
    public static readonly bool Decimals = (Large, 1.10m) == (16777217m, 1.1m);
    public static readonly bool NotANumber = (double.NaN, 1) == (double.NaN, 1);
    public static readonly bool NotEqual = (double.NaN, 1) != (double.NaN, 1);
    public static readonly bool EqualsMethod = (double.NaN, 1).Equals((double.NaN, 1));
    public static readonly bool Chars = ('a', 98) == (97, 'b');
}
