// refused: Parse
using System.Globalization;
using RailRules;
using UnitsNet;

namespace Programs.Refused.QuantityParse;

/// <summary>A quantity read from text.</summary>
public static class P
{
    public static ElectricPotential Refused => ElectricPotential.Parse("5 V", CultureInfo.InvariantCulture);
}
