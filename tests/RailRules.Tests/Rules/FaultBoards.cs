using System.Collections.Immutable;

namespace RailRules.Tests.Rules;

/// <summary>Boards for the rules on faults; all invented.</summary>
internal static class FaultBoards
{
    internal static Fuse Fuse(double rated = 30, double interrupts = 1000, double volts = 80, double? timeConstant = null, double? melting = null) => new()
    {
        PartNumber = "Reed",
        RatedCurrent = rated.Amperes(),
        DcVoltageRating = volts.Volts(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        InterruptingRatings = [new() { Current = interrupts.Amperes(), Voltage = volts.Volts(), TimeConstant = timeConstant is { } tau ? tau.Seconds() : null }],
        MeltingIntegral = melting is { } integral ? integral.AmpereSquaredSeconds() : null,
        ColdResistance = 0.Ohms(),
    };

    internal static Battery Battery(double volts, double ohms, double henries = 0, string name = "Bank") => new()
    {
        Name = name,
        OpenCircuitVoltage = volts.Volts(),
        InternalResistance = ohms.Ohms(),
        InternalInductance = henries.Henries(),
    };

    internal static Supply Limited(double volts, double amperes, LimitedBy? by = LimitedBy.Hardware, double ohms = 0) => new()
    {
        Name = "Unit",
        Voltage = volts.Volts(),
        SourceResistance = ohms > 0 ? ohms.Ohms() : null,
        SourceInductance = ohms > 0 ? UnitsNet.ElectricInductance.Zero : null,
        CurrentLimit = new() { Level = amperes.Amperes(), Response = ohms > 0 ? 100.Microseconds() : null, LimitedBy = by },
    };

    internal static Rail Rail(Source from, params ImmutableArray<Element> path) => new("Rail") { From = from, Path = path, Return = Return.Mirrored, Surroundings = Apply.Bench };

    internal static Wire Wire(double ohms, double ampacity) => new() { Name = "Lead", Resistance = ohms.Ohms(), Ampacity = ampacity.Amperes(), Inductance = UnitsNet.ElectricInductance.Zero };
}
