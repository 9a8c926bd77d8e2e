namespace Programs.Extensions.RefReceivers;

/// <summary>Extension methods that take their receiver by reference.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var n = 5;
        n.Double();
        n.Double();
        var point = new Point { X = 1 };
        point.MoveRight(4);
        return $"{n} {point.X} {point.Sum()}";
    }
}

public struct Point
{
    public int X;
    public int Y;
}

public static class Changes
{
    public static void Double(ref this int value) => value *= 2;

    public static void MoveRight(ref this Point point, int by) => point.X += by;

    public static int Sum(in this Point point) => point.X + point.Y;
}
