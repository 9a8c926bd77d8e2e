namespace Programs.Functions.ParamsSpan;

/// <summary>Params of read-only spans.</summary>
public static class P
{
    public static readonly int Sum = Total(1, 2, 3);
    public static readonly int None = Total();
    public static readonly double Max = Largest(2.5, 7, -1);

    private static int Total(params ReadOnlySpan<int> values)
    {
        var sum = 0;
        foreach (var value in values)
            sum += value;
        return sum;
    }

    private static double Largest(params ReadOnlySpan<double> values)
    {
        var largest = double.NegativeInfinity;
        for (var i = 0; i < values.Length; i++)
            largest = Math.Max(largest, values[i]);
        return largest;
    }
}
