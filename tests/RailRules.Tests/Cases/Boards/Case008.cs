namespace RailRules.Tests.Cases.Boards;

/// <summary>case-008: 14 A running all day through a 15 A board fuse at 65 C body temperature. Invented, not for use.</summary>
[Board]
public static class Case008
{
    public static readonly Supply Input12 = new() { Voltage = 12.Volts() };

    public static readonly Rail Input = new()
    {
        From = Input12,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 15.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                ReferenceAmbient = 25.Celsius(),
                Derating = [new(25.Celsius(), 1), new(45.Celsius(), 0.95)],
                BodyTemperatureLimit = 125.Celsius(),
            },
        ],
        Surroundings = new() { Ambient = Band.Of(25.Celsius(), 45.Celsius()) }, // the air in the case, not the body at 58 to 65 °C
        Loads = [new() { Name = "Board", Current = 14.Amperes() }],
    };
}
