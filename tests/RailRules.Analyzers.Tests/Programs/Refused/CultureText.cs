// refused: CultureInfo
using System.Globalization;

namespace Programs.Refused.CultureText;

/// <summary>A number's text in the culture of the machine.</summary>
public static class P
{
    public static string Refused => 1.5.ToString("N2", new CultureInfo("de-DE"));
}
