namespace RailRules.Tests.Cases.Boards;

/// <summary>case-074: 20 A bed fuse opens now and then after the supply was upgraded from 20 A to 30 A. Invented, not for use.</summary>
[Board]
public static class Case074
{
    /// <summary>Sagged under load.</summary>
    public static readonly Supply Old = new() { Voltage = 11.Volts(), ContinuousCurrent = 20.Amperes() };

    /// <summary>Trimmed high.</summary>
    public static readonly Supply New = new() { Voltage = 12.4.Volts(), ContinuousCurrent = 30.Amperes() };

    public static readonly Supply TwentyFour = new() { Voltage = 24.Volts() };

    private static readonly Surroundings Shop = new() { Ambient = 30.Celsius() };

    private static readonly Fuse Blade = new() { RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius(), ColdResistance = 0.Ohms() };

    /// <summary>The case counts no drop, in the fuse neither.</summary>
    private static readonly Return NoDrop = Return.OfResistance(0.Ohms());

    private static readonly Fuse BedFuse = Blade with { Name = "F_BED", RatedCurrent = 20.Amperes() };

    /// <summary>220 W at 12 V.</summary>
    private static readonly Load Bed = new() { Name = "Bed", Resistance = (12.0 * 12 / 220).Ohms() };

    public static readonly Rail NewSupply = new() { From = New, Path = [BedFuse], Return = NoDrop, Surroundings = Shop, Loads = [Bed] };

    public static readonly Rail OldSupply = new() { From = Old, Path = [BedFuse], Return = NoDrop, Surroundings = Shop, Loads = [Bed] };

    /// <summary>Switched on for 200 of 255 parts of the time: r.m.s. of the full current.</summary>
    public static readonly Rail Pulsed = new()
    {
        From = New,
        Path = [BedFuse],
        Return = NoDrop,
        Surroundings = Shop,
        Loads = [new() { Name = "Bed", Pulses = [new() { Current = (12.4 * 220 / 144).Amperes(), Width = 200.Milliseconds(), Period = 255.Milliseconds() }] }],
    };

    /// <summary>The remedy: a bed of 220 W at 24 V.</summary>
    public static readonly Rail Bed24 = new()
    {
        From = TwentyFour,
        Path = [Blade with { Name = "F15", RatedCurrent = 15.Amperes() }],
        Return = NoDrop,
        Surroundings = Shop,
        Loads = [new() { Name = "Bed", Resistance = (24.0 * 24 / 220).Ohms() }],
    };

    /// <summary>What was asked for: a fuse of 30 A before terminals of 20 A.</summary>
    public static readonly Rail ThirtyAmpereFuse = new()
    {
        From = New,
        Path = [Blade with { Name = "F30", RatedCurrent = 30.Amperes() }, new Connector { Name = "Terminals", ContactRating = 20.Amperes(), ContactResistance = 0.Ohms() }],
        Return = NoDrop,
        Surroundings = Shop,
        Loads = [Bed],
    };
}
