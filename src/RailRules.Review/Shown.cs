using System.Globalization;
using System.Text;

namespace RailRules.Review;

/// <summary>Text of users as it is shown: nothing in it can steer a terminal, turn the reading direction or vanish.</summary>
internal static class Shown
{
    /// <summary>The text on one line, with control, direction and private characters spelled out.</summary>
    internal static string Text(string? text)
    {
        if (string.IsNullOrEmpty(text) || text.All(c => c is >= ' ' and <= '~'))
        {
            return text ?? "";
        }

        var result = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is '\n' or '\r' or '\t' or 0x85 or 0x2028 or 0x2029)
            {
                result.Append(' ');
            }
            else if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.OtherNotAssigned or UnicodeCategory.PrivateUse)
            {
                result.Append(CultureInfo.InvariantCulture, $"⟨U+{rune.Value:X4}⟩");
            }
            else
            {
                result.Append(rune.ToString());
            }
        }

        return result.ToString();
    }

    /// <summary>At most so many characters, the rest counted.</summary>
    internal static string Short(string? text, int length)
    {
        var shown = Text(text);
        if (shown.Length <= length)
        {
            return shown;
        }

        var cut = char.IsHighSurrogate(shown[length - 1]) ? length - 1 : length;
        return string.Create(CultureInfo.InvariantCulture, $"{shown[..cut]}… ({shown.Length} characters)");
    }

    /// <summary>A margin, capacity over demand.</summary>
    internal static string Margin(double? margin) => margin switch
    {
        null => "",
        double.PositiveInfinity => "unlimited",
        { } value => Figures.Text(value, "×"),
    };

    /// <summary>"1 check", "2 checks".</summary>
    internal static string Count(int count, string one, string? many = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many ?? one + "s")}");
}
