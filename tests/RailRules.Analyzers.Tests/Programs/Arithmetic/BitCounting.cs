namespace Programs.Arithmetic.BitCounting;

/// <summary>Bit tricks with loops and with the library.</summary>
public static class P
{
    public static readonly int Ones = Count(0b1011_0110_1110);
    public static readonly int Highest = HighestBit(1000);
    public static readonly uint Reversed = Reverse(0x0000_00F1);
    public static readonly bool Power = IsPowerOfTwo(4096) && !IsPowerOfTwo(4095);
    public static readonly int LibraryOnes = int.PopCount(0b1011_0110_1110);

    private static int Count(uint value)
    {
        var count = 0;
        for (; value != 0; value &= value - 1)
            count++;
        return count;
    }

    private static int HighestBit(int value)
    {
        var bit = -1;
        while (value > 0)
        {
            value >>= 1;
            bit++;
        }

        return bit;
    }

    private static uint Reverse(uint value)
    {
        var result = 0u;
        for (var i = 0; i < 32; i++)
            result |= ((value >> i) & 1) << (31 - i);
        return result;
    }

    private static bool IsPowerOfTwo(int value) => value > 0 && (value & (value - 1)) == 0;
}
