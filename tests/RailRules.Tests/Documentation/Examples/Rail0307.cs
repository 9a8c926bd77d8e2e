namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0307
{
    static readonly Battery Pack = new() { OpenCircuitVoltage = Band.Of(42.Volts(), 54.6.Volts()), InternalResistance = Band.Of(20.Milliohms(), 60.Milliohms()) };

    static readonly Wire Lead = new() { Length = 1.5.Meters(), Section = 6.SquareMillimeters(), Ampacity = 40.Amperes() };

    static readonly Wire Pigtail = Lead with { Length = 100.Millimeters() };

    static readonly Fuse Reed30 = new() { RatedCurrent = 30.Amperes() };

    /// <summary>The fuse stands at the far end of the lead.</summary>
    static readonly Rail Drive = new() { From = Pack, Path = [Lead, Reed30.As("F1")] };

    static readonly Rail Better = new() { From = Pack, Path = [Pigtail, Reed30.As("F2"), Lead] };
}
