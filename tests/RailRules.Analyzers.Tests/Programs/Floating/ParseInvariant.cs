using System.Globalization;

namespace Programs.Floating.ParseInvariant;

/// <summary>Parsing with the invariant culture.</summary>
public static class P
{
    public static readonly double Plain = double.Parse("2.5", CultureInfo.InvariantCulture);
    public static readonly double Exponent = double.Parse("1.5e-3", CultureInfo.InvariantCulture);
    public static readonly double Grouped = double.Parse("1,234.5", NumberStyles.Float | NumberStyles.AllowThousands, CultureInfo.InvariantCulture);
    public static readonly int Int = int.Parse("-42", CultureInfo.InvariantCulture);
    public static readonly int Hex = int.Parse("ff", NumberStyles.HexNumber, CultureInfo.InvariantCulture);
    public static readonly decimal Money = decimal.Parse("1.10", CultureInfo.InvariantCulture);
    public static readonly bool Flag = bool.Parse("True");
    public static readonly bool Failed = !double.TryParse("abc", NumberStyles.Float, CultureInfo.InvariantCulture, out var unused) && unused == 0;
    public static readonly int Tried = int.TryParse("77", NumberStyles.Integer, CultureInfo.InvariantCulture, out var parsed) ? parsed : -1;
}
