using System.Collections.Immutable;

namespace Programs.Tuples.Returned;

/// <summary>Several results from a helper, named.</summary>
public static class P
{
    public static readonly (double Min, double Max, double Mean) Statistics = Compute([3, 1, 2]);
    public static readonly double Range = Statistics.Max - Statistics.Min;
    public static readonly string Text = $"{Statistics.Mean:0.0}";
    public static readonly (int Quotient, int Remainder) Division = Divide(17, 5);
    public static readonly ImmutableArray<(int Index, char Letter)> Indexed = [.. "abc".Select((c, i) => (Index: i, Letter: c))];
    public static readonly (double Min, double Max, double Mean) Changed = Statistics with { Mean = 0 };

    private static (double Min, double Max, double Mean) Compute(double[] values)
    {
        var (min, max, sum) = (double.MaxValue, double.MinValue, 0.0);
        foreach (var value in values)
        {
            min = Math.Min(min, value);
            max = Math.Max(max, value);
            sum += value;
        }

        return (min, max, sum / values.Length);
    }

    private static (int Quotient, int Remainder) Divide(int a, int b) => (a / b, a % b);
}
