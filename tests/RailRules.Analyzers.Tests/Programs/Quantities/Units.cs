using System.Collections.Immutable;
using RailRules;
using UnitsNet;
using UnitsNet.Units;

namespace Programs.Quantities.Units;

/// <summary>Units as values, chosen at run time.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Values = [.. new[] { ElectricCurrentUnit.Ampere, ElectricCurrentUnit.Milliampere, ElectricCurrentUnit.Kiloampere }.Select(u => 2.Amperes().As(u))];
    public static readonly string Name = LengthUnit.Millimeter.ToString();
    public static readonly bool Same = 1.Meters().ToUnit(LengthUnit.Foot).Unit == LengthUnit.Foot;
    public static readonly double Inches = Length.FromInches(2.5).Millimeters;
    public static readonly double Mils = 35.Micrometers().Mils;
    public static readonly Area Section = 2.5.SquareMillimeters();
    public static readonly double Circular = Area.FromSquareMillimeters(Math.PI / 4).SquareMillimeters;
    public static readonly double Minutes = 90.Seconds().Minutes;
}
