namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0204
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), SourceResistance = 10.Milliohms() };

    static readonly Fuse Weir100 = new() { RatedCurrent = 100.Amperes(), Characteristic = Characteristic.Iec60269gG };

    static readonly Wire Cable = new() { Length = 8.Meters(), Section = 35.SquareMillimeters(), Ampacity = 105.Amperes() };

    static readonly Connector Plug = new() { Contacts = 8, ContactRating = 20.Amperes(), ContactResistance = Band.Of(0.4.Milliohms(), 0.6.Milliohms()) };

    /// <summary>100 A ≤ 105 A, but it opens for certain only at 160 A.</summary>
    static readonly Rail Drive = new() { From = Plant, Path = [Weir100.As("F1"), Cable, Plug], Return = Return.Mirrored };
}
