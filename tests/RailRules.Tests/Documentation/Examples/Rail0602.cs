namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0602
{
    static readonly Surroundings Lock = new() { RequiredQualifications = ["Lock-2"] };

    static readonly Supply Plant = new() { Voltage = 54.Volts() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes(), Qualifications = ["Lock-1"] };

    static readonly Fuse Weir20 = new() { RatedCurrent = 20.Amperes(), Qualifications = ["Lock-1", "Lock-2"] };

    static readonly Rail Sled = new() { From = Plant, Path = [Reed20.As("F1")], Surroundings = Lock };

    static readonly Rail Better = new() { From = Plant, Path = [Weir20.As("F2")], Surroundings = Lock };
}
