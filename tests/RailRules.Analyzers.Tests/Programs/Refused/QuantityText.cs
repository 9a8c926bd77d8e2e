// refused: 
using RailRules;

namespace Programs.Refused.QuantityText;

/// <summary>The text of a quantity.</summary>
public static class P
{
    public static string Refused => 5.Volts().ToString();
}
