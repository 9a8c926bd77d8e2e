namespace RailRules.Tests.Cases.Boards;

/// <summary>case-059: Two 10 A supplies claimed redundant for 15 A. Invented, not for use.</summary>
[Board]
public static class Case059
{
    public static readonly Supply SupplyA = new() { Voltage = 24.Volts(), ContinuousCurrent = 10.Amperes(), Derating = [new(40.Celsius(), 1), new(50.Celsius(), 0.9)] };

    public static readonly Supply SupplyB = new() { Voltage = 24.Volts(), ContinuousCurrent = 10.Amperes(), Derating = [new(40.Celsius(), 1), new(50.Celsius(), 0.9)] };

    private static readonly BlockingDiode Diode = new() { ForwardDrop = 0.5.Volts() };

    public static readonly Rail Critical = new()
    {
        Feeds = [new() { From = SupplyA, Path = [Diode] }, new() { From = SupplyB, Path = [Diode] }],
        Surroundings = new() { Ambient = Band.Of(20.Celsius(), 50.Celsius()) },
        Loads = [new() { Name = "Controllers", Current = 15.Amperes() }],
    };
}
