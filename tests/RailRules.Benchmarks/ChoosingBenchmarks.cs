using System.Collections.Immutable;
using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using RailRules.Choosing;

namespace RailRules.Benchmarks;

/// <summary>A part chosen from a table of invented fuses, for one place of a board of 100 rails.</summary>
public class ChoosingBenchmarks
{
    private ImmutableArray<Rail> rails;
    private ImmutableArray<Fuse> table;

    /// <summary>Parts of the table.</summary>
    [Params(100, 1000, 10_000)]
    public int Parts { get; set; }

    [GlobalSetup]
    public void Make() => (rails, table) = (Board(shared: false), Table(Parts));

    /// <summary>Each rail with a supply of its own: the place touches its rail only.</summary>
    [Benchmark]
    public int Choose() => PartChoice.At(rails, new Place(rails[50], 0), table).Passing.Length;

    /// <summary>One search and one trial of every part, of apart and of connected rails; the two answers are compared.</summary>
    public static void Once(int parts)
    {
        var table = Table(parts);
        foreach (var shared in new[] { false, true })
        {
            var rails = Board(shared);
            var place = new Place(rails[50], 0);
            PartChoice.At(rails, place, table.Take(20)); // machine code is made once
            var watch = Stopwatch.StartNew();
            var choice = PartChoice.At(rails, place, table);
            var searched = watch.Elapsed.TotalMilliseconds;
            watch.Restart();
            var exhaustive = new PartSearch(Upstream.Rails(rails), [place], table, null, new PartSearch.Exhaustive()).Run(5);
            var tried = watch.Elapsed.TotalMilliseconds;
            var same = choice.Passing.Select(one => one.Index).SequenceEqual(exhaustive.Passing.Select(one => one.Index))
                && choice.NearMisses.Select(one => (one.Index, one.Nearness)).SequenceEqual(exhaustive.NearMisses.Select(one => (one.Index, one.Nearness)));
            Console.WriteLine($"{(shared ? "one supply" : "supplies apart")}: {parts} parts, {choice.Passing.Length} pass; searched {searched:0} ms, every part with every rule {tried:0} ms, ratio {tried / searched:0.0}, {(same ? "same answer" : "DIFFERENT ANSWERS")}");
        }
    }

    private static ImmutableArray<Fuse> Table(int parts)
    {
        var random = new Random(7);
        return
        [
            .. Enumerable.Range(0, parts).Select(i =>
            {
                var rated = Math.Round(1 + (100 * random.NextDouble()), 1);
                var volts = random.Next(3) == 0 ? 32 : 80;
                return new Fuse
                {
                    PartNumber = $"Invented{i}",
                    RatedCurrent = rated.Amperes(),
                    DcVoltageRating = volts.Volts(),
                    InterruptingRatings = [new() { Current = (random.Next(3) == 0 ? 1 : 20).Kiloamperes(), Voltage = volts.Volts(), TimeConstant = 5.Milliseconds() }],
                    MeltingIntegral = (0.5 * rated * rated).AmpereSquaredSeconds(),
                    ClearingIntegrals = [new() { Value = (1.5 * rated * rated).AmpereSquaredSeconds(), Voltage = volts.Volts(), TimeConstant = 5.Milliseconds() }],
                    RatingBasis = RatingBasis.CarriesThreeQuarters,
                    ReferenceAmbient = 25.Celsius(),
                    Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.86), new(85.Celsius(), 0.71)],
                    ColdResistance = (0.06 / rated).Ohms(),
                    OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
                    Flammability = Flammability.V0,
                    Joint = Joint.Soldered,
                };
            }),
        ];
    }

    private static ImmutableArray<Rail> Board(bool shared)
    {
        var plant = Plant();
        var fuse = Table(1)[0] with { RatedCurrent = 25.Amperes(), DcVoltageRating = 80.Volts(), MeltingIntegral = 320.AmpereSquaredSeconds(), ColdResistance = 3.Milliohms() };
        return
        [
            .. Enumerable.Range(1, 100).Select(i => new Rail
            {
                Name = $"R{i}",
                From = shared ? plant : Plant(),
                Surroundings = new() { Ambient = Band.Of(0.Celsius(), 25.Celsius(), 40.Celsius()), Altitude = 500.Meters() },
                Path = [fuse.As($"F{i}"), new Trace { Resistance = 1.5.Milliohms() }, new Connector { ContactResistance = Band.Of(0.5.Milliohms(), 2.Milliohms()) }],
                Return = Return.Mirrored,
                Loads = [new() { Power = (200 + (i % 50)).Watts(), MinVoltage = 36.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 470.Microfarads() }],
            }),
        ];
    }

    private static Supply Plant() => new()
    {
        Name = "Plant",
        Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()),
        TransientMax = 60.Volts(),
        SourceResistance = Band.Of(5.Milliohms(), 9.Milliohms()),
        SourceInductance = 5.Microhenries(),
        ContinuousCurrent = 5.Kiloamperes(),
    };
}
