namespace RailRules.Tests.Cases.Boards;

/// <summary>case-069: 30 A fuse with 22 A load at 3000 m. Invented, not for use.</summary>
[Board]
public static class Case069
{
    public static readonly Supply Unit = new() { Voltage = 48.Volts() };

    private static readonly Fuse F1 = new() { Name = "F1", RatedCurrent = 30.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius() };

    private static readonly Load Repeater = new() { Name = "Repeater", Current = 22.Amperes() };

    public static readonly Rail AtSite = new() { From = Unit, Path = [F1], Surroundings = new() { Ambient = 25.Celsius(), Altitude = 3000.Meters() }, Loads = [Repeater] };

    public static readonly Rail InWorkshop = new() { From = Unit, Path = [F1], Surroundings = new() { Ambient = 25.Celsius(), Altitude = 0.Meters() }, Loads = [Repeater] };
}
