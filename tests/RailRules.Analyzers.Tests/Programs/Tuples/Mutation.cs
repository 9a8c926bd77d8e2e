namespace Programs.Tuples.Mutation;

/// <summary>Tuples are values with fields that can be set.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var a = (X: 1, Y: 2);
        var b = a;
        b.X = 10;
        a.Y += 5;
        var array = new[] { a, b };
        array[0].X++;
        var list = new List<(int X, int Y)> { a };
        var copy = list[0];
        copy.X = 99;
        return $"{a} {b} {array[0]} {list[0]} {copy}";
    }
}
