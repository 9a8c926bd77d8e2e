namespace RailRules.Tests.Cases.Boards;

/// <summary>case-042: 40 A and 5 A in parallel to make 45 A. Invented, not for use.</summary>
[Board]
public static class Case042
{
    public static readonly Supply Bench = new() { Voltage = 12.Volts() }; // the case does not state the voltage

    private static readonly Fuse Blade = new() { RatingBasis = RatingBasis.CarriesRating, ReferenceAmbient = 25.Celsius(), InterruptingRatings = [new() { Current = 1.Kiloamperes() }] };

    public static readonly Rail Bus = new()
    {
        From = Bench,
        Path =
        [
            new ParallelGroup
            {
                Name = "Pair",
                Branches =
                [
                    [Blade with { Name = "F1", RatedCurrent = 40.Amperes(), ColdResistance = 1.4.Milliohms() }],
                    [Blade with { Name = "F2", RatedCurrent = 5.Amperes(), ColdResistance = 17.5.Milliohms() }],
                ],
            },
        ],
        Return = Return.OfResistance(0.Ohms()),
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Load", Current = 45.Amperes() }],
    };
}
