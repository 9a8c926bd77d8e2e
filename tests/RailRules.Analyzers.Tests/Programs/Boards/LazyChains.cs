using RailRules;
using UnitsNet;

namespace Programs.Boards.LazyChains;

/// <summary>Statics of several files' worth of classes used before and after.</summary>
public static class P
{
    public static readonly ElectricCurrent Limit = Limits.Slot * 2;
    public static readonly Rail Slot = Rails.Slot(3);
    public static readonly string Name = Rails.Slot(9).Name;
}

public static class Limits
{
    public static readonly ElectricCurrent Base = 5.Amperes();

    public static readonly ElectricCurrent Slot = Base * Scale.Factor;
}

public static class Scale
{
    public static readonly double Factor = Root + 2;

    private const double Root = 1.5;
}

public static class Rails
{
    private static readonly Supply Plant = new() { Voltage = 54.Volts() };

    public static Rail Slot(int number) => new() { Name = Prefix + number, From = Plant, Path = [new Fuse { RatedCurrent = Limits.Slot }] };

    private static string Prefix => "Slot ";
}
