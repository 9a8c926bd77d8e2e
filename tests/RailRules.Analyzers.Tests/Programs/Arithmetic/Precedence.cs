namespace Programs.Arithmetic.Precedence;

/// <summary>Operators bind as the language says, not as they stand.</summary>
public static class P
{
    private static readonly int A = 7;
    private static readonly int B = 3;
    private static readonly int C = 2;
    public static readonly int MultiplyFirst = A + B * C;
    public static readonly int LeftToRight = A - B - C;
    public static readonly int DivideThenMultiply = A / B * C;
    public static readonly int MixedRemainder = A * B % C + A / C % B;
    public static readonly int ShiftAfterAdd = A << B + C;
    public static readonly bool ComparisonBeforeEquality = A > B == B > C;
    public static readonly int AndBeforeXorBeforeOr = A | B ^ C & 1;
    public static readonly bool AndBeforeOr = A > B || B > A && C > A;
    public static readonly int Unary = -A * -B - -C;
    public static readonly int Complement = ~A & B;
    public static readonly string Concatenated = A + B + "x" + A + B;
    public static readonly int Conditional = A > B ? B > C ? 1 : 2 : 3;
    public static readonly int Coalesced = (A > 100 ? (int?)null : A) ?? B + C;
}
