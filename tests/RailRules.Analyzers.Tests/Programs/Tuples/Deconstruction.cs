namespace Programs.Tuples.Deconstruction;

/// <summary>Into new and old variables, with discards and nesting.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static readonly int Swapped = Swap(3, 8);
    public static readonly double InLoop = Loop();

    private static string Run()
    {
        var (a, b) = (1, "two");
        int c;
        (c, var d) = (3, 4.5);
        (_, var e, _) = (5, 6, 7);
        var ((f, g), h) = ((8, 9), 10);
        (a, c) = (c, a);
        return $"{a} {b} {c} {d} {e} {f} {g} {h}";
    }

    private static int Swap(int x, int y)
    {
        (x, y) = (y, x);
        return x * 10 + y;
    }

    private static double Loop()
    {
        var sum = 0.0;
        foreach (var (volts, amperes) in new[] { (12.0, 1.5), (5.0, 2.0) })
            sum += volts * amperes;
        return sum;
    }
}
