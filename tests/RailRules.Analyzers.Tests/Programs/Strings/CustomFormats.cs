using System.Globalization;

namespace Programs.Strings.CustomFormats;

/// <summary>Custom numeric formats.</summary>
public static class P
{
    private static readonly double D = 1234.567;
    public static readonly string Digits = D.ToString("0.###", CultureInfo.InvariantCulture);
    public static readonly string Padded = D.ToString("000000.0", CultureInfo.InvariantCulture);
    public static readonly string Grouped = D.ToString("#,##0.00", CultureInfo.InvariantCulture);
    public static readonly string Percent = 0.256.ToString("0.0%", CultureInfo.InvariantCulture);
    public static readonly string Sections = string.Join('|', new[] { 1.5, -1.5, 0 }.Select(x => x.ToString("+0.0;-0.0;zero", CultureInfo.InvariantCulture)));
    public static readonly string Literal = D.ToString("0.0 'V'", CultureInfo.InvariantCulture);
    public static readonly string Exponent = D.ToString("0.00e+00", CultureInfo.InvariantCulture);
    public static readonly string Round = 2.5.ToString("0", CultureInfo.InvariantCulture) + 3.5.ToString("0", CultureInfo.InvariantCulture) + 0.125.ToString("0.00", CultureInfo.InvariantCulture);
}
