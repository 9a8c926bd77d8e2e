namespace Programs.Arithmetic.NativeIntegers;

/// <summary>Nint and nuint compute as 64 bit numbers on a 64 bit machine.</summary>
public static class P
{
    private static readonly nint Size = 40;
    private static readonly nuint Count = 3;
    public static readonly nint Sum = Size + 2;
    public static readonly nint Quotient = Size / 7;
    public static readonly nuint Product = Count * 5;
    public static readonly long AsLong = Size * 2;
    public static readonly string Text = (Size - 50).ToString();
}
