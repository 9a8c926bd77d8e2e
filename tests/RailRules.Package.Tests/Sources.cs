namespace RailRules.Package.Tests;

/// <summary>What the consumers hold.</summary>
internal static class Sources
{
    /// <summary>The line of <see cref="Unsound"/> where the finding belongs.</summary>
    public const int UnsoundLine = 33;

    /// <summary>A board with one mistake: a 32 V fuse on a rail that reaches 60 V. All data invented.</summary>
    public const string Unsound = """
        using RailRules;
        using UnitsNet;

        namespace Consumer;

        /// <summary>One blade on a 54 V plant. All data invented, not for use.</summary>
        [Board]
        public static class BladeShelf
        {
            private static readonly ElectricPotential FuseVoltage = 32.Volts();

            public static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts(), ContinuousCurrent = 100.Amperes(), ProspectiveFault = new() { Current = Band.Of(4.Kiloamperes(), 6.Kiloamperes()), TimeConstant = 1.Milliseconds() } };

            public static readonly Fuse Sallow25 = new()
            {
                Citation = "invented, not for use", RatedCurrent = 25.Amperes(),
                DcVoltageRating = FuseVoltage,
                InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
                MeltingIntegral = 320.AmpereSquaredSeconds(),
                ClearingIntegrals = [new() { Value = 900.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
                Curve = [new(33.8.Amperes(), 100.Seconds(), 3600.Seconds()), new(50.Amperes(), 4.Seconds(), 120.Seconds()), new(75.Amperes(), 0.3.Seconds(), 3.Seconds()), new(250.Amperes(), 5.Milliseconds(), 20.Milliseconds())],
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                ReferenceAmbient = 25.Celsius(),
                Derating = [new(25.Celsius(), 1.00), new(85.Celsius(), 0.71)],
                ColdResistance = 2.6.Milliohms(),
                OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()), Flammability = Flammability.V0,
            };

            public static readonly Rail Blade = new()
            {
                From = Plant,
                Surroundings = new() { Ambient = Band.Of(0.Celsius(), 40.Celsius()) },
                Path = [Sallow25.As("F1"), new Trace { Length = 60.Millimeters(), Width = 16.Millimeters(), Thickness = 70.Micrometers(), Inner = false, TemperatureLimit = 130.Celsius() }],
                Return = Return.Mirrored,
                Loads = [new() { Power = 400.Watts(), MinVoltage = 36.Volts(), MaxVoltage = 75.Volts() }],
            };
        }
        """;

    /// <summary>The same board with a fuse for 80 V.</summary>
    public static string Sound { get; } = Unsound.Replace("32.Volts()", "80.Volts()", StringComparison.Ordinal);

    /// <summary>The sources of a sample.</summary>
    public static IEnumerable<(string Name, string Text)> OfSample(string sample) =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples", sample), "*.cs").Select(file => (Path.GetFileName(file), File.ReadAllText(file)));
}
