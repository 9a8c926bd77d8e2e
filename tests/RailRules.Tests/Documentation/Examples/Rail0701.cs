namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0701
{
    static readonly Supply Plant = new()
    {
        Voltage = 54.Volts(),
        TransientMax = 60.Volts(),
        ContinuousCurrent = 0.2.Amperes(),
        SourceResistance = 1.Ohms(),
        CurrentLimit = new() { Level = 0.2.Amperes(), Style = CurrentLimitStyle.ConstantCurrent, Response = 1.Microseconds() },
    };

    /// <summary>Same size and number of amperes, for 58 V systems.</summary>
    static readonly Fuse Sedge2 = new()
    {
        PartNumber = "Sedge2",
        RatedCurrent = 2.Amperes(),
        DcVoltageRating = 58.Volts(),
        InterruptingRatings = [new() { Current = 100.Amperes(), Voltage = 60.Volts(), TimeConstant = 2.Milliseconds() }],
        RatingBasis = RatingBasis.CarriesThreeQuarters,
    };

    static readonly Fuse Moss2 = Sedge2 with { PartNumber = "Moss2", DcVoltageRating = 80.Volts() };

    static readonly Fuse Reed2 = Moss2 with { PartNumber = "Reed2", Alternates = [Sedge2, Moss2] };

    static readonly Rail Lamp = new() { From = Plant, Path = [Reed2.As("F1")], Return = Return.OfResistance(1.Milliohms()), Loads = [new() { Current = 0.1.Amperes(), MaxVoltage = 75.Volts() }] };
}
