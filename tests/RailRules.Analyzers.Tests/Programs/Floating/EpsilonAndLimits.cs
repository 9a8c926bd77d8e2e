namespace Programs.Floating.EpsilonAndLimits;

/// <summary>The named limits.</summary>
public static class P
{
    public static readonly double Epsilon = double.Epsilon;
    public static readonly double HalfEpsilon = double.Epsilon / 2;
    public static readonly double MaxPlus = double.MaxValue + 1;
    public static readonly float FloatMax = float.MaxValue;
    public static readonly float FloatOver = float.MaxValue * 2;
    public static readonly double FloatOverInDouble = float.MaxValue * 2.0;
    public static readonly bool FiniteTest = double.IsFinite(double.MaxValue) && double.IsInfinity(double.MaxValue * 2);
    public static readonly int IntMin = int.MinValue;
    public static readonly decimal DecimalMax = decimal.MaxValue;
    public static readonly float NarrowOverflow = (float)1e300;
    public static readonly float NarrowUnderflow = (float)1e-300;
}
