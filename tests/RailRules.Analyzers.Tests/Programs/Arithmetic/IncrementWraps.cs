namespace Programs.Arithmetic.IncrementWraps;

/// <summary>Increments outside checked contexts wrap round.</summary>
public static class P
{
    public static readonly int Int = Up(int.MaxValue);
    public static readonly sbyte SignedByte = Up(sbyte.MaxValue);
    public static readonly ushort UnsignedShort = Down((ushort)0);
    public static readonly ulong Wide = Down(0UL);
    public static readonly char Letter = Down('\0');

    private static int Up(int value) => ++value;

    private static sbyte Up(sbyte value)
    {
        value++;
        return value;
    }

    private static ushort Down(ushort value)
    {
        value--;
        return value;
    }

    private static ulong Down(ulong value) => --value;

    private static char Down(char value) => --value;
}
