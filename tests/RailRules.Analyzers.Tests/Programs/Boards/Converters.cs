using RailRules;

namespace Programs.Boards.Converters;

/// <summary>A converter as load of one rail and source of the next.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()) };
    private static readonly Rail Bus = new() { From = Plant };
    public static readonly Converter Intermediate = new()
    {
        Input = Bus,
        Output = Band.Of(11.8.Volts(), 12.Volts(), 12.2.Volts()),
        Efficiency = Band.Of(92.Percent(), 96.Percent()),
        CurrentLimit = new() { Level = Band.Of(44.Amperes(), 50.Amperes(), 56.Amperes()), Style = CurrentLimitStyle.Hiccup, OnTime = 10.Milliseconds() },
        Isolated = false,
    };
    public static readonly Rail Twelve = new() { From = Intermediate, Loads = [new() { Power = 300.Watts() }] };
    public static readonly double InputAtLowLine = 300 / Intermediate.Efficiency!.Value.Min.DecimalFractions / Plant.Voltage!.Value.Min.Volts;
}
