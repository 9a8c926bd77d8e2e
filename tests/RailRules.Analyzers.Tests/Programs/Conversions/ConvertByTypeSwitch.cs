using System.Collections.Immutable;
using System.Globalization;

namespace Programs.Conversions.ConvertByTypeSwitch;

/// <summary>Numbers of unknown type brought to double.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Values = [.. new object[] { 1, 2L, 3f, 4d, 5m, (byte)6, 'A', "8", true }.Select(ToDouble)];

    private static double ToDouble(object value) => value switch
    {
        int i => i,
        long l => l,
        float f => f,
        double d => d,
        decimal m => (double)m,
        byte b => b,
        char c => c,
        string s => double.Parse(s, CultureInfo.InvariantCulture),
        bool flag => flag ? 1 : 0,
        _ => double.NaN,
    };
}
