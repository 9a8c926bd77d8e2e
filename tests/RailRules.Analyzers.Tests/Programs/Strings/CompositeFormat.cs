using System.Globalization;

namespace Programs.Strings.CompositeFormat;

/// <summary>String.Format with the invariant culture.</summary>
public static class P
{
    public static readonly string Simple = string.Format(CultureInfo.InvariantCulture, "{0} of {1}", 3, 8);
    public static readonly string Formats = string.Format(CultureInfo.InvariantCulture, "{0:0.0} {1,6:F2}|{2,-4}|", 1.25, 2.5, "x");
    public static readonly string Repeated = string.Format(CultureInfo.InvariantCulture, "{0}{0}{1}", "ab", 'c');
    public static readonly string Braces = string.Format(CultureInfo.InvariantCulture, "{{{0}}}", 1);
    public static readonly string Created = string.Create(CultureInfo.InvariantCulture, $"{1.5:0.00}");
}
