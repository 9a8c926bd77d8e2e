namespace Programs.Floating.FloatAccumulates;

/// <summary>A loop in float differs from the loop in double.</summary>
public static class P
{
    public static readonly float InFloat = SumFloat(1000);
    public static readonly double InDouble = SumDouble(1000);
    public static readonly double FloatMinusDouble = SumFloat(1000) - SumDouble(1000);

    private static float SumFloat(int count)
    {
        float sum = 0;
        for (var i = 1; i <= count; i++)
            sum += 1f / i;
        return sum;
    }

    private static double SumDouble(int count)
    {
        double sum = 0;
        for (var i = 1; i <= count; i++)
            sum += 1.0 / i;
        return sum;
    }
}
