namespace Programs.Functions.CompoundOrder;

/// <summary>The left side of a compound assignment is read before the right side runs.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var x = 5;
        x += x++ + ++x;
        var y = 1;
        y = y++ + y;
        var z = 10;
        int Change()
        {
            z = 100;
            return 1;
        }

        z += Change();
        var i = 0;
        var array = new[] { 10, 20, 30 };
        array[i++] += i;
        array[i] = i = 2;
        return $"{x} {y} {z} {array[0]} {array[1]} {i}";
    }
}
