using RailRules;
using UnitsNet;

namespace Programs.Boards.UnitConversions;

/// <summary>Data given in units of a foreign data sheet.</summary>
public static class P
{
    public static readonly Length Inches = Length.FromInches(2.5);
    public static readonly Length Feet = Length.FromFeet(12);
    public static readonly Temperature Fahrenheit = Temperature.FromDegreesFahrenheit(185);
    public static readonly Area CircularMils = Area.FromSquareMillimeters(4110 * 5.067075e-4);
    public static readonly double OuncesToMicrometers = Math.Round(2 * 34.8, 2);
    public static readonly Trace Board = new() { Length = Length.FromInches(3), Width = Length.FromMils(120), Thickness = (2 * 34.8).Micrometers() };
    public static readonly double Millimeters = Board.Length!.Value.Millimeters;
}
