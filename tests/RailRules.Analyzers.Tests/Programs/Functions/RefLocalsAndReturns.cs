namespace Programs.Functions.RefLocalsAndReturns;

/// <summary>References as locals and results.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var array = new[] { 1, 2, 3 };
        ref var middle = ref array[1];
        middle = 20;
        middle++;
        Largest(array) = -1;
        var x = 1;
        var y = 2;
        ref var chosen = ref x > y ? ref x : ref y;
        chosen = 9;
        chosen = ref x;
        chosen += 5;
        foreach (ref var item in array.AsSpan())
            item *= 2;
        return $"{string.Join(',', array)} {x} {y}";
    }

    private static ref int Largest(int[] values)
    {
        var at = 0;
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] > values[at])
                at = i;
        }

        return ref values[at];
    }
}
