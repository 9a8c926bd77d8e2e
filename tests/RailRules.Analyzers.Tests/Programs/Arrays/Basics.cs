namespace Programs.Arrays.Basics;

/// <summary>Making, reading, writing and default contents.</summary>
public static class P
{
    public static readonly int[] Zeros = new int[3];
    public static readonly string?[] Nulls = new string?[2];
    public static readonly int[] Filled = new[] { 1, 2, 3 };
    public static readonly double[] Widened = new double[] { 1, 2.5f, 'a' };
    public static readonly int[] Sized = new int[2] { 7, 8 };
    public static readonly bool[] Flags = new bool[1];
    public static readonly int[] Changed = Change();
    public static readonly int Length = Filled.Length;
    public static readonly long LongIndex = Filled[2L];
    public static readonly Array Base = new byte[] { 1, 2 };

    private static int[] Change()
    {
        var array = new int[4];
        for (var i = 0; i < array.Length; i++)
            array[i] = i * i;
        array[1] += 10;
        array[2]++;
        array[^1] *= 2;
        return array;
    }
}
