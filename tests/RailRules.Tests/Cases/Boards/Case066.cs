namespace RailRules.Tests.Cases.Boards;

/// <summary>case-066: 130 mV fuse drop at 4 A on a 5 V input. Invented, not for use.</summary>
[Board]
public static class Case066
{
    /// <summary>5 V - 2 %.</summary>
    public static readonly Supply Unit = new() { Voltage = Band.Of(4.9.Volts(), 5.1.Volts()) };

    /// <summary>1 m each way; the case counts 20 °C. Continuous currents are assumed so large that the lead stays there.</summary>
    private static readonly Wire Lead = new() { Length = 1.Meters(), Section = 1.SquareMillimeters(), Ampacity = 1.Kiloamperes(), TemperatureLimit = 70.Celsius() };

    private static readonly Surroundings Room = new() { Ambient = 20.Celsius() };

    private static readonly Load Board = new() { Name = "Board", Current = 4.Amperes(), MinVoltage = 4.75.Volts(), MaxVoltage = 5.5.Volts() };

    public static readonly Rail WithFuse = new()
    {
        From = Unit,
        Path = [new Fuse { Name = "F1", RatedCurrent = 4.Amperes(), VoltageDrop = 130.Millivolts() }, Lead],
        Return = Return.Mirrored,
        Surroundings = Room,
        Loads = [Board],
    };

    public static readonly Rail WithoutFuse = new() { From = Unit, Path = [Lead], Return = Return.Mirrored, Surroundings = Room, Loads = [Board] };

    public static readonly Rail WithElectronicFuse = new()
    {
        From = Unit,
        Path = [new ElectronicFuse { Name = "U1", OnResistance = 20.Milliohms() }, Lead],
        Return = Return.Mirrored,
        Surroundings = Room,
        Loads = [Board],
    };

    public static readonly Rail WithThickLead = new()
    {
        From = Unit,
        Path = [new ElectronicFuse { Name = "U2", OnResistance = 10.Milliohms() }, Lead with { Section = 2.5.SquareMillimeters() }],
        Return = Return.Mirrored,
        Surroundings = Room,
        Loads = [Board],
    };
}
