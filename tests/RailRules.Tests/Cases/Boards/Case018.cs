using System.Collections.Immutable;

namespace RailRules.Tests.Cases.Boards;

/// <summary>case-018: Bolt-down fuse with 2 kA interrupting rating on two parallel 280 Ah banks. Invented, not for use.</summary>
[Board]
public static class Case018
{
    private static readonly Fuse Main = new()
    {
        RatedCurrent = 300.Amperes(),
        DcVoltageRating = 32.Volts(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        ReferenceAmbient = 25.Celsius(),
        ColdResistance = 0.Ohms(),
    };

    private static readonly Fuse Common2kA = Main with { Name = "F_MAIN", InterruptingRatings = [new() { Current = 2.Kiloamperes(), Voltage = 32.Volts() }] };

    private static readonly Fuse Common20kA = Main with { Name = "F_MAIN", InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 32.Volts() }] };

    public static readonly Rail At2kA = Bar("At2kA", [Common2kA], []);

    public static readonly Rail At20kA = Bar("At20kA", [Common20kA], []);

    public static readonly Rail AtEach = Bar("AtEach", [], [Main with { Name = "F_EACH", InterruptingRatings = Common20kA.InterruptingRatings }]);

    /// <summary>Four cells of 0.25 mΩ with 0.2 mΩ of links; the pack's electronics are not credited.</summary>
    private static Battery Bank(string name) => new() { Name = name, OpenCircuitVoltage = Band.Of(12.Volts(), 13.6.Volts()), ChargeVoltage = 14.6.Volts(), InternalResistance = 1.2.Milliohms() };

    private static Rail Bar(string name, ImmutableArray<Element> common, ImmutableArray<Element> each) => new()
    {
        Name = name,
        Feeds = [new() { From = Bank("A"), Path = Named(each, "F_A"), Return = Return.OfResistance(0.Ohms()) }, new() { From = Bank("B"), Path = Named(each, "F_B"), Return = Return.OfResistance(0.Ohms()) }],
        Path = common,
        Return = Return.OfResistance(0.Ohms()),
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "House", Current = 100.Amperes() }], // assumed here; the case is silent
    };

    private static ImmutableArray<Element> Named(ImmutableArray<Element> parts, string name) => [.. parts.Select(part => part with { Name = name })];
}
