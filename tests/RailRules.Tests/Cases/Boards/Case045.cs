namespace RailRules.Tests.Cases.Boards;

/// <summary>case-045: Choosing a lower PTC hold current without looking at 60 C. Invented, not for use.</summary>
[Board]
public static class Case045
{
    public static readonly Supply Unit = new() { Voltage = 5.Volts() }; // the case does not state the voltage

    private static readonly ResettableFuse Half = new()
    {
        Name = "F05",
        HoldCurrent = 0.5.Amperes(),
        TripCurrent = 1.Amperes(), // twice the hold current is assumed here
        ReferenceAmbient = 23.Celsius(),
        Derating = [new(23.Celsius(), 1), new(40.Celsius(), 0.84), new(60.Celsius(), 0.7)],
    };

    private static readonly ResettableFuse ThreeQuarters = Half with
    {
        Name = "F075",
        HoldCurrent = 0.75.Amperes(),
        TripCurrent = 1.5.Amperes(),
        Derating = [new(23.Celsius(), 1), new(60.Celsius(), 0.72)],
    };

    private static readonly Load Board = new() { Name = "Board", Current = 0.5.Amperes() };

    public static readonly Rail HalfAmpereAt60 = new() { From = Unit, Path = [Half], Surroundings = new() { Ambient = Band.Of(23.Celsius(), 60.Celsius()) }, Loads = [Board] };

    public static readonly Rail HalfAmpereAt40 = new() { From = Unit, Path = [Half], Surroundings = new() { Ambient = Band.Of(23.Celsius(), 40.Celsius()) }, Loads = [Board] };

    public static readonly Rail Proposed = new() { From = Unit, Path = [ThreeQuarters], Surroundings = new() { Ambient = Band.Of(23.Celsius(), 60.Celsius()) }, Loads = [Board] };
}
