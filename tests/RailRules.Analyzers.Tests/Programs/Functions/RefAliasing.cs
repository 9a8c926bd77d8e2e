namespace Programs.Functions.RefAliasing;

/// <summary>Two ref parameters may be the same variable.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var x = 5;
        Both(ref x, ref x);
        var y = 1;
        Captured(ref y, () => y);
        var array = new[] { 1, 2 };
        Both(ref array[0], ref array[0]);
        return $"{x} {y} {array[0]}";
    }

    private static void Both(ref int a, ref int b)
    {
        a += 1;
        b *= 10;
        a -= 2;
    }

    private static void Captured(ref int value, Func<int> read)
    {
        value = 7;
        value += read();
    }
}
