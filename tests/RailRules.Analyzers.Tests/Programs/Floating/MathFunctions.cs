namespace Programs.Floating.MathFunctions;

/// <summary>The library's functions, number for number.</summary>
public static class P
{
    public static readonly double Root = Math.Sqrt(2);
    public static readonly double CubeRoot = Math.Cbrt(27);
    public static readonly double Power = Math.Pow(1.05, 12);
    public static readonly double Exponential = Math.Exp(1.5);
    public static readonly double Natural = Math.Log(10);
    public static readonly double Common = Math.Log10(1000);
    public static readonly double Base = Math.Log(8, 2);
    public static readonly double Sine = Math.Sin(Math.PI / 6);
    public static readonly double Angle = Math.Atan2(1, -1);
    public static readonly double Hyperbolic = Math.Tanh(0.3);
    public static readonly double Clamped = Math.Clamp(7.5, 0, 5);
    public static readonly double Absolute = Math.Abs(-3.25);
    public static readonly int Sign = Math.Sign(-0.1);
    public static readonly double Max = Math.Max(1.5f, 1.25);
    public static readonly int IntMax = Math.Max(3, 4);
    public static readonly long BigProduct = Math.BigMul(2_000_000_000, 3);
    public static readonly double Fused = Math.FusedMultiplyAdd(0.1, 10, -1);
    public static readonly int Quotient = Math.DivRem(17, 5, out var rest) * 100 + rest;
}
