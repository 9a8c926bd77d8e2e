namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0603
{
    static readonly Surroundings Rover = new() { Vibration = 15.MetersPerSecondSquared() };

    static readonly Supply Pack = new() { Voltage = 48.Volts() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes(), Joint = Joint.Clip };

    static readonly Fuse Weir20 = new() { RatedCurrent = 20.Amperes(), Joint = Joint.BoltedLocked };

    static readonly Rail Drive = new() { From = Pack, Path = [Reed20.As("F1")], Surroundings = Rover };

    static readonly Rail Better = new() { From = Pack, Path = [Weir20.As("F2")], Surroundings = Rover };
}
