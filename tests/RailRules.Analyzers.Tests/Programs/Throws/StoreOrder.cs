namespace Programs.Throws.StoreOrder;

/// <summary>The value of an assignment throws before the missing element does; in a compound assignment the element comes first.</summary>
public static class P
{
    public static int Simple => Store(() => throw new InvalidOperationException("value"));

    public static int Missing => Store(() => 1);

    public static int Compound => Add(() => throw new InvalidOperationException("value"));

    public static int NullArray => Null(() => throw new InvalidOperationException("value"));

    public static int NullObject => OnNull(() => throw new InvalidOperationException("value"));

    public static int Mismatch => Wrong();

    private static int Store(Func<int> value)
    {
        var array = new int[2];
        array[5] = value();
        return array[0];
    }

    private static int Add(Func<int> value)
    {
        var array = new int[2];
        array[5] += value();
        return array[0];
    }

    private static int Null(Func<int> value)
    {
        int[]? array = null;
        array![0] = value();
        return 1;
    }

    private static int OnNull(Func<int> value)
    {
        Cell? cell = null;
        cell!.Value = value();
        return 1;
    }

    private static int Wrong()
    {
        object[] array = new string[1];
        array[0] = 5;
        return array.Length;
    }
}

public sealed class Cell
{
    public int Value;
}
