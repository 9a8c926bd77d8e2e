using RailRules;

namespace Programs.Boards.SharedDefaults;

/// <summary>Common data written once and changed by with.</summary>
public static class P
{
    private static readonly Fuse Common = new()
    {
        Citation = "invented, not for use",
        DcVoltageRating = 80.Volts(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        ReferenceAmbient = 25.Celsius(),
        Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.86), new(85.Celsius(), 0.71)],
        OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
        Flammability = Flammability.V0,
    };
    public static readonly Fuse Small = Common with { PartNumber = "Teasel5", RatedCurrent = 5.Amperes(), MeltingIntegral = 12.AmpereSquaredSeconds() };
    public static readonly Fuse Large = Common with { PartNumber = "Teasel30", RatedCurrent = 30.Amperes(), MeltingIntegral = 900.AmpereSquaredSeconds(), Joint = Joint.Bolted };
    public static readonly Fuse Cold = Large with { OperatingTemperature = Band.Of((-55).Celsius(), 85.Celsius()), Derating = [.. Large.Derating, new(95.Celsius(), 0.6)] };
    public static readonly int Points = Cold.Derating.Length;
    public static readonly double Factor = Cold.Derating[^1].Factor;
}
