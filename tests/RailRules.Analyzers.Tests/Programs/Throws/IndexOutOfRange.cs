namespace Programs.Throws.IndexOutOfRange;

/// <summary>Indexes outside an array.</summary>
public static class P
{
    private static readonly int[] Array = [1, 2, 3];
    private static readonly int Five = 5;
    public static int Over => Array[Five];
    public static int Negative => Array[-Five];
    public static int FromEnd => Array[^Five];
    public static int Rectangular => (new int[2, 2])[1, Five];
    public static int Written
    {
        get
        {
            var copy = new int[1];
            return copy[Five] = 1;
        }
    }
}
