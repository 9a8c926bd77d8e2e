namespace Programs.Arrays.StoreOrder;

/// <summary>Index, then value, then the store.</summary>
public static class P
{
    public static readonly string Order = Run();

    private static string Run()
    {
        var log = "";
        int Next(int n)
        {
            log += n;
            return n;
        }

        var array = new int[4];
        array[Next(1)] = Next(2);
        array[Next(1)] += Next(3);
        array[Next(3)] = array[Next(1)] = Next(0);
        array[Next(2)]++;
        (array[Next(0)], array[Next(1)]) = (Next(2), Next(3));
        return log + " " + string.Join(',', array);
    }
}
