namespace RailRules.Tests.Cases.Boards;

/// <summary>case-082: Module powered over its data cable back-feeds the whole crate through its backplane lead. Invented, not for use.</summary>
[Board]
public static class Case082
{
    public static readonly Supply CrateSupply = new() { Voltage = 12.Volts(), ContinuousCurrent = 10.Amperes() }; // its rating is not stated in the case

    /// <summary>25 W over the data cable.</summary>
    public static readonly Supply LocalSource = new() { Voltage = 12.Volts(), ContinuousCurrent = (25.0 / 12).Amperes(), CurrentLimit = new() { Level = (25.0 / 12).Amperes(), LimitedBy = LimitedBy.Hardware } };

    public static readonly Rail Crate = new()
    {
        Feeds =
        [
            new() { From = CrateSupply },
            new() { From = LocalSource, Path = [new Connector { Name = "BackplaneLead", ContactRating = 1.Amperes() }] }, // nothing blocks
        ],
        Loads = [new() { Name = "Crate", Current = 5.Amperes() }],
    };
}
