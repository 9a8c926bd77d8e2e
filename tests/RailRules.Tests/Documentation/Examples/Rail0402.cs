namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0402
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 60.Volts()) };

    static readonly ElectronicFuse Heron = new()
    {
        StartCurrent = Band.Of(2.Amperes(), 2.2.Amperes(), 2.4.Amperes()),
        StartTimer = Band.Of(60.Milliseconds(), 80.Milliseconds()),
    };

    static readonly Capacitor Bulk = new() { Capacitance = Band.Of(1.76.Millifarads(), 2.2.Millifarads(), 2.64.Millifarads()) };

    static readonly Rail Sled = new()
    {
        From = Plant,
        Path = [Heron.As("U1")],
        Capacitors = [Bulk],
        Loads = [new() { Name = "Blade", Power = 90.Watts(), EnablesAt = EnablesAt.PowerGood }],
    };

    static readonly Rail Hasty = new()
    {
        From = Plant,
        Path = [Heron.As("U2")],
        Capacitors = [Bulk],
        Loads = [new() { Name = "Blade", Power = 90.Watts(), EnablesAt = EnablesAt.Voltage(36.Volts()) }],
    };

    static readonly Rail Small = new()
    {
        From = Plant,
        Path = [Heron.As("U3")],
        Loads = [new() { Name = "Fan", Current = 0.5.Amperes(), InputCapacitance = 470.Microfarads(), EnablesAt = EnablesAt.Voltage(18.Volts()) }],
    };
}
