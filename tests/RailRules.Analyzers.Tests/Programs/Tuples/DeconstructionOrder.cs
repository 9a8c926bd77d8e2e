namespace Programs.Tuples.DeconstructionOrder;

/// <summary>Targets are evaluated before values are stored.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        int[] Array(string name, int[] array)
        {
            log += name;
            return array;
        }

        int Value(string name, int value)
        {
            log += name;
            return value;
        }

        var one = new int[2];
        var two = new int[2];
        (Array("A", one)[Value("i", 0)], Array("B", two)[Value("j", 1)]) = (Value("x", 5), Value("y", 6));
        var k = 0;
        (k, one[1]) = (1, k);
        (two[0], k) = (k + 1, one[0]);
        return $"{log} {one[0]}{one[1]} {two[0]}{two[1]} {k}";
    }
}
