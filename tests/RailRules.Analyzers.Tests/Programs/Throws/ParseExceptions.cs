using System.Globalization;

namespace Programs.Throws.ParseExceptions;

/// <summary>Texts that are no numbers.</summary>
public static class P
{
    public static int Int => int.Parse("12x", CultureInfo.InvariantCulture);
    public static double Double => double.Parse("", CultureInfo.InvariantCulture);
    public static byte Byte => byte.Parse("300", CultureInfo.InvariantCulture);
    public static bool Bool => bool.Parse("yes");
}
