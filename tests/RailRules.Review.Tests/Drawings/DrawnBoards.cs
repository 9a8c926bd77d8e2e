using System.Collections.Immutable;
using AngleSharp.Dom;

namespace RailRules.Review.Tests.Drawings;

/// <summary>Boards that drawings are tried on. All data invented, not for use.</summary>
internal static class DrawnBoards
{
    internal static Supply Plant { get; } = new()
    {
        Name = "Plant",
        Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()),
        TransientMax = 60.Volts(),
        SourceResistance = Band.Of(5.Milliohms(), 9.Milliohms()),
        SourceInductance = 5.Microhenries(),
        ContinuousCurrent = 20.Kiloamperes(),
    };

    internal static Fuse Fuse(double rated, string designator) => new()
    {
        PartNumber = $"Reed{rated.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
        Designator = designator,
        RatedCurrent = rated.Amperes(),
        DcVoltageRating = 80.Volts(),
        MeltingIntegral = (rated * rated).AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = (rated * rated * 3).AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        ReferenceAmbient = 25.Celsius(),
        Derating = [new(25.Celsius(), 1), new(85.Celsius(), 0.7)],
        ColdResistance = (0.06 / rated).Ohms(),
    };

    internal static Surroundings Cabin { get; } = new() { Ambient = Band.Of((-5).Celsius(), 55.Celsius()), Altitude = 850.Meters() };

    /// <summary>One bus and so many rails on it; alike, or each with another load.</summary>
    internal static BoardReview Shelf(int count, bool alike)
    {
        var bus = new Rail { Name = "Bus", From = Plant, Path = [Fuse(10000, "F0"), new Busbar { Name = "Bar", Resistance = 0.01.Milliohms(), Ampacity = 15.Kiloamperes(), TemperatureLimit = 90.Celsius() }], Return = Return.Mirrored, Surroundings = Cabin };
        IEnumerable<Rail> rails = Enumerable.Range(1, count).Select(i => new Rail
        {
            Name = $"Sled {i}",
            From = bus,
            Path = [Fuse(25, $"F{i}"), new Wire { Name = "Lead", Length = 2.Meters(), Section = 4.SquareMillimeters(), Ampacity = 32.Amperes(), TemperatureLimit = 90.Celsius() }],
            Return = Return.Mirrored,
            Loads = [new() { Power = (alike ? 500 : 100 + (500.0 * i / count)).Watts(), MinVoltage = 38.Volts(), MaxVoltage = 75.Volts() }],
        });
        return Of([bus, .. rails]);
    }

    internal static BoardReview Of(ImmutableArray<Rail> rails) =>
        BoardReview.Of(new BoardInput { Name = "Board", FullName = "Tests.Board", Project = "Tests", Rails = rails, Checks = Engine.Check(rails) });

    /// <summary>The text of an element without the tool tips in it.</summary>
    internal static string Words(IElement element) => string.Concat(element.ChildNodes.Where(node => node is not IElement { LocalName: "title" }).Select(node => node.TextContent));
}
