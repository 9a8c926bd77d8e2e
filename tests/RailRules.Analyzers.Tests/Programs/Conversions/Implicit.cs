namespace Programs.Conversions.Implicit;

/// <summary>Implicit widening in assignments, arguments and returns.</summary>
public static class P
{
    private static readonly byte Byte = 200;
    private static readonly char Letter = 'x';
    private static readonly float Float = 1.1f;
    public static readonly long Long = Byte;
    public static readonly double Double = Letter;
    public static readonly double FromFloat = Float;
    public static readonly decimal Decimal = Byte;
    public static readonly double Argument = Half(Byte);
    public static readonly object Returned = Widen(5);
    public static readonly double[] Array = [Byte, Letter, Float, 1];
    public static readonly long Sum = new long[] { 1, Byte, Letter }.Sum();

    private static double Half(double value) => value / 2;

    private static long Widen(int value) => value;
}
