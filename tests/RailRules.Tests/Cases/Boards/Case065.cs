namespace RailRules.Tests.Cases.Boards;

/// <summary>case-065: 20 A through a 20 A blade fuse: 85 mV and 80 K rise on the board. Invented, not for use.</summary>
[Board]
public static class Case065
{
    public static readonly Supply Unit = new() { Voltage = 12.Volts() };

    private static readonly Surroundings Case = new() { Ambient = 50.Celsius() };

    private static readonly Load Board = new() { Name = "Board", Current = 20.Amperes() };

    /// <summary>The case applies no derating for the 50 °C; the ratings are taken to hold there. Holder and laminate bear 105 °C.</summary>
    private static readonly Fuse Blade = new() { RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 50.Celsius(), BodyTemperatureLimit = 105.Celsius() };

    public static readonly Rail With20 = new()
    {
        From = Unit,
        Path = [Blade with { Name = "F20", RatedCurrent = 20.Amperes(), VoltageDrop = 85.Millivolts(), TemperatureRise = 80.Kelvins() }],
        Surroundings = Case,
        Loads = [Board],
    };

    /// <summary>44 mV at 20 A is 66 mV at its rated 30 A, where the 80 K at 1.7 W make 93 K.</summary>
    public static readonly Rail With30 = new()
    {
        From = Unit,
        Path = [Blade with { Name = "F30", RatedCurrent = 30.Amperes(), VoltageDrop = 66.Millivolts(), TemperatureRise = (80 * (30 * 0.066) / (20 * 0.085)).Kelvins() }, new Wire { Name = "Copper", Ampacity = 30.Amperes() }],
        Surroundings = Case,
        Loads = [Board],
    };
}
