using System.Globalization;

namespace Programs.Patterns.Scope;

/// <summary>Variables of patterns live where the language says.</summary>
public static class P
{
    public static readonly string Result = Run(7) + Run("text") + Run(null);

    private static string Run(object? value)
    {
        if (value is not int number)
            return value is string text && text.Length > 1 ? text[..1] : "none";
        number += 1;
        while (number is var n and < 10)
            number = n + 1;
        return number.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}
