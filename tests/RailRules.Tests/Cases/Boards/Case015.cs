namespace RailRules.Tests.Cases.Boards;

/// <summary>case-015: AC cartridge fuses found in a 380 V DC circuit. Invented, not for use.</summary>
[Board]
public static class Case015
{
    public static readonly Supply Bus380 = new() { Voltage = 380.Volts() };

    public static readonly Rail Cabinet = new()
    {
        From = Bus380,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 32.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                AcVoltageRating = 500.Volts(), // no DC rating is published, and none is invented
                ReferenceAmbient = 25.Celsius(),
            },
        ],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Load", Current = 20.Amperes() }],
    };
}
