using RailRules;

namespace PartsLibrary;

/// <summary>A pump house whose parts come from the tables beside this file. Parts and board are invented, not for use.</summary>
[Board]
public static class PumpHouse
{
    private static readonly Wire Feeder = new() { Length = 3.Meters(), Section = 6.SquareMillimeters(), Ampacity = 46.Amperes(), TemperatureLimit = 90.Celsius(), ShortTimeLimit = 250.Celsius() };

    /// <summary>The air in the cabinet.</summary>
    public static readonly Surroundings Cabinet = new() { Ambient = Band.Of((-10).Celsius(), 25.Celsius(), 50.Celsius()), Altitude = 400.Meters() };

    /// <summary>A 48 V rectifier with a battery across it.</summary>
    public static readonly Supply Rectifier = new()
    {
        Voltage = Band.Of(44.Volts(), 53.Volts(), 56.Volts()),
        TransientMax = 60.Volts(),
        SourceResistance = Band.Of(8.Milliohms(), 10.Milliohms(), 14.Milliohms()),
        SourceInductance = 4.Microhenries(),
        ProspectiveFault = new() { Current = Band.Of(3.1.Kiloamperes(), 7.Kiloamperes()), TimeConstant = 500.Microseconds() },
        OutputCapacitance = 4.7.Millifarads(),
        OutputCapacitorEsr = 4.Milliohms(),
        ContinuousCurrent = 80.Amperes(),
        Earthing = Earthing.Negative,
    };

    /// <summary>Drives the sluice motor's controller.</summary>
    public static readonly Rail Controller = new()
    {
        From = Rectifier,
        Path = [Parts.InventedFuses.Beck_30.As("F1"), Feeder, Parts.InventedConnectors.Alder_2x30.As("X1")],
        Return = Return.Mirrored,
        Surroundings = Cabinet,
        Clamps = [Parts.InventedClamps.Osier_15_64],
        Loads = [new() { Power = 500.Watts(), MinVoltage = 38.Volts(), MaxVoltage = 110.Volts(), InputCapacitance = 470.Microfarads(), InputCapacitorEsr = 50.Milliohms(), StartsInLife = 5000 }],
    };
}
