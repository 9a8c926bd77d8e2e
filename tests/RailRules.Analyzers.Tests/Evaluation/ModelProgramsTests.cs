namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>Boards as people write them, interpreted and really run.</summary>
public class ModelProgramsTests
{
    private const string Parts = """
        public static class Parts
        {
            public static class Fuses
            {
                public static readonly Fuse Weir200 = new()
                {
                    PartNumber = "WEIR-200", RatedCurrent = 200.Amperes(), DcVoltageRating = 80.Volts(), MeltingIntegral = JouleIntegral.FromAmpereSquaredSeconds(12_000),
                    InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
                    OperatingTemperature = Band.Of((-40).Celsius(), 125.Celsius()),
                };
                public static readonly Fuse Reed20 = Weir200 with { PartNumber = "REED-20", RatedCurrent = 20.Amperes() };
            }
        }
        """;

    [Fact]
    public void A_board_with_parts_in_another_class_gives_the_same_objects()
    {
        var harness = DifferentialHarness.AssertSame(
            """
            [Board]
            public static partial class P
            {
                private static readonly Connector MainLug = new() { ContactResistance = Band.Of(0.05.Milliohms(), 0.2.Milliohms()) };
                private static readonly Busbar MainBusbar = new() { Resistance = 0.2.Milliohms() };
                private static readonly Trace SledTrace = new() { Resistance = 1.5.Milliohms() };
                private static readonly TransientSuppressor SledClamp = new() { StandOffVoltage = 64.Volts() };
                public static readonly Surroundings Cabin = new() { Ambient = Band.Of((-5).Celsius(), 25.Celsius(), 55.Celsius()), Altitude = 850.Meters() };
                public static readonly Supply Plant = new()
                {
                    Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()),
                    TransientMax = 60.Volts(),
                    SourceResistance = Band.Of(5.Milliohms(), 6.Milliohms(), 9.Milliohms()),
                    SourceInductance = 5.Microhenries(),
                };
                public static readonly Rail Bus = new()
                {
                    From = Plant,
                    Path = [MainLug, Parts.Fuses.Weir200.As("F1"), MainBusbar],
                    Return = Return.Mirrored,
                    Surroundings = Cabin,
                    Policy = DesignPolicy.Default,
                };
                public static readonly ImmutableArray<Rail> Sleds =
                [
                    .. Enumerable.Range(1, 8).Select(slot => new Rail
                    {
                        Name = $"Sled {slot}",
                        From = Bus,
                        Path = [Parts.Fuses.Reed20.As($"F{10 + slot}"), SledTrace],
                        Return = Return.Mirrored,
                        Clamps = [SledClamp],
                        Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 940.Microfarads() }],
                    }),
                ];
                public static Rail Fresh => new() { From = Bus };
                public static readonly string Names = string.Join(", ", Sleds.Select(sled => sled.Name));
            }
            """,
            Parts);
        var sleds = (System.Collections.Immutable.ImmutableArray<Rail>)harness.Results["Sleds"].Value!;
        Assert.Equal(8, sleds.Length);
        Assert.Equal("Bus", ((Rail)harness.Results["Bus"].Value!).Name);
    }
}
