using System.Collections.Immutable;
using CsCheck;
using RailRules.Choosing;
using RailRules.Rules;

namespace RailRules.Tests.Choosing;

/// <summary>The search for parts: against every part tried by hand on a board built anew, and by example. All boards and parts invented.</summary>
public sealed class PartChoiceTests
{
    private static readonly HashSet<string> NoJudgement = ["RAIL0004", "RAIL0008", "RAIL0015", "RAIL0702", "RAIL0900"];

    private static Fuse Part(double rated, double volts = 80, double interrupting = 20_000, double melting = 0.6) => new("Part")
    {
        PartNumber = $"Reed{rated}-{volts}",
        RatedCurrent = rated.Amperes(),
        DcVoltageRating = volts.Volts(),
        InterruptingRatings = [new() { Current = interrupting.Amperes(), Voltage = volts.Volts(), TimeConstant = 5.Milliseconds() }],
        MeltingIntegral = (melting * rated * rated).AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = (3 * melting * rated * rated).AmpereSquaredSeconds(), Voltage = volts.Volts(), TimeConstant = 5.Milliseconds() }],
        Curve = [new((1.35 * rated).Amperes(), null, 3600.Seconds()), new((2 * rated).Amperes(), null, 60.Seconds()), new((5 * rated).Amperes(), null, 1.Seconds()), new((20 * rated).Amperes(), null, 10.Milliseconds())],
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        ReferenceAmbient = 25.Celsius(),
        ColdResistance = (0.05 / rated).Ohms(),
        OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
        Flammability = Flammability.V0,
        Joint = Joint.Soldered,
        Qualifications = [],
    };

    private static Rail Feeder(Source from, object? part, double watts, double section = 2.5, string name = "Feeder") => new()
    {
        Name = name,
        From = from,
        Path = [.. part is Element element ? (Element[])[element.As("F1")] : [], new Wire("Cable") { Length = 3.Meters(), Section = section.SquareMillimeters(), Ampacity = (section * 10).Amperes(), TemperatureLimit = 70.Celsius() }],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = Band.Of(0.Celsius(), 25.Celsius()), Altitude = 100.Meters() },
        Loads = [new("Sled") { Power = watts.Watts(), MinVoltage = 36.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 470.Microfarads(), StartsInLife = 1000 }],
    };

    private static Supply Plant() => new()
    {
        Name = "Plant",
        Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()),
        TransientMax = 60.Volts(),
        SourceResistance = Band.Of(5.Milliohms(), 9.Milliohms()),
        SourceInductance = 5.Microhenries(),
        ContinuousCurrent = 500.Amperes(),
        Earthing = Earthing.Negative,
    };

    private static PartChoice Choose(Rail rail, params IEnumerable<object> parts) => PartChoice.At([rail], new Place(rail, 0), parts);

    [Fact]
    public void The_smallest_sufficient_rating_comes_first_and_what_rules_out_the_others_is_said()
    {
        var rail = Feeder(Plant(), Part(5), 400);
        var choice = Choose(rail, new[] { 30.0, 5, 16, 20, 10 }.Select(rated => (object)Part(rated)).Append(Part(16, volts: 32)));

        // 400 W at 43 V less the drop is 9.4 A; three quarters of the rating: 12.6 A is needed.
        Assert.Equal("Reed16-80", choice.Passing[0].Label);
        Assert.Equal(16, choice.Passing[0].Rating);
        Assert.Contains(choice.Passing[0].Margins, margin => margin is { Rule: "RAIL0201", IsOwn: true, Margin: > 1.2 and < 1.3 });
        Assert.Contains(choice.NearMisses, miss => miss.Label == "Reed10-80" && miss.RuledOutBy.Any(margin => margin.Rule == "RAIL0201"));
        Assert.Contains(choice.NearMisses, miss => miss.Label == "Reed16-32" && miss.RuledOutBy.Any(margin => margin.Rule == "RAIL0101"));
        Assert.Equal(16, choice.Window!.Least);
        Assert.Equal("Reed10-80", choice.Window.Below!.Label);
        Assert.Null(choice.NoRoom);
    }

    [Fact]
    public void Fewer_undecided_checks_come_before_a_smaller_rating()
    {
        var choice = Choose(Feeder(Plant(), Part(5), 400, section: 4), Part(16) with { DcVoltageRating = null }, Part(20));
        Assert.Equal("Reed20-80", choice.Passing[0].Label);
        Assert.True(choice.Passing[0].Undecided.Length < choice.Passing[1].Undecided.Length);
        Assert.Contains(choice.Passing[1].Undecided, check => check.Rule is "RAIL0101" or "RAIL0102");
    }

    [Fact]
    public void Of_equal_ratings_the_cooler_part_comes_first()
    {
        var choice = Choose(Feeder(Plant(), Part(5), 400), Part(16) with { PartNumber = "Warm", ColdResistance = 6.Milliohms() }, Part(16) with { PartNumber = "Cool", ColdResistance = 3.Milliohms() });
        Assert.Equal(["Cool", "Warm"], choice.Passing.Select(candidate => candidate.Label));
        Assert.Equal(9.4 * 9.4 * 0.003, choice.Passing[0].Dissipation!.Value, 0.02);
    }

    [Fact]
    public void An_empty_slot_is_filled_before_what_stands_there()
    {
        var rail = Feeder(Plant(), null, 400);
        var choice = PartChoice.At([rail], new Place(rail, 0) { IsEmpty = true }, [Part(10), Part(16)]);
        Assert.Equal(["Reed16-80"], choice.Passing.Select(candidate => candidate.Label));
    }

    [Fact]
    public void What_fails_with_and_without_the_part_is_told_apart()
    {
        var plant = Plant();
        var other = Feeder(plant, Part(1), 400, name: "Other") with { Loads = [new("Far") { Power = 400.Watts(), MinVoltage = 36.Volts(), MaxVoltage = 50.Volts() }] };
        other = other with { Path = other.Path.SetItem(0, ((Fuse)other.Path[0]).As("F2")) };
        var rail = Feeder(plant, Part(5), 400);
        var choice = PartChoice.At([rail, other], new Place(rail, 0), [Part(10), Part(16)]);
        Assert.Equal(["Reed16-80"], choice.Passing.Select(candidate => candidate.Label));
        Assert.Contains(choice.FailingAnyway, check => check.Rule == "RAIL0101" && check.Rail == other);
        Assert.Contains(choice.FailingAnyway, check => check.Rule == "RAIL0201" && check.Rail == other);
    }

    [Fact]
    public void Places_with_one_part_are_judged_together()
    {
        var plant = Plant();
        var (light, heavy) = (Feeder(plant, Part(5), 200, name: "Light"), Feeder(plant, Part(5), 400, name: "Heavy"));
        light = light with { Path = light.Path.SetItem(0, Part(5).As("F2")) };
        var choice = PartChoice.At([light, heavy], [new Place(light, 0), new Place(heavy, 0)], [Part(10), Part(16)]);
        Assert.Equal(["Reed16-80"], choice.Passing.Select(candidate => candidate.Label));
    }

    [Fact]
    public void A_place_is_found_by_its_designator()
    {
        var inner = new ParallelGroup("Twins") { Branches = [[Part(5).As("F7")], [Part(5).As("F8")]] };
        var rail = Feeder(Plant(), null, 400) with { Path = [inner], Clamps = [new("Clamp") { Designator = "D1" }] };
        var place = Assert.Single(Place.Of([rail], "F8"));
        Assert.Equal("F8", ((Element)place.Part!).Designator);
        Assert.Equal((1, 0), Assert.Single(place.Branches));
        Assert.True(Assert.Single(Place.Of([rail], "D1")).IsClamp);
        Assert.Empty(Place.Of([rail], "F9"));
        Assert.Equal(16, ((Fuse)((ParallelGroup)Rebuilding.With([rail], [place], Part(16)).Rails[0].Path[0]).Branches[1][0]).RatedCurrent!.Value.Amperes);
    }

    /// <summary>R-06: 57 V behind 5 mΩ is 11.4 kA, above 5 kA; 57 V / 5 kA = 11.4 mΩ is 2.28 times as much.</summary>
    [Fact]
    public void Where_nothing_passes_the_two_rules_and_the_smallest_change_are_named()
    {
        var choice = Choose(Feeder(Plant(), Part(5), 400), Part(10), Part(8), Part(16, interrupting: 5000), Part(20, interrupting: 4000));
        Assert.Empty(choice.Passing);
        Assert.Null(choice.Window);
        Assert.Equal(("RAIL0201", "RAIL0301"), (choice.NoRoom!.First, choice.NoRoom.Second));
        Assert.Equal(("Reed10-80", "Reed16-80"), (choice.NoRoom.NearestFirst!.Label, choice.NoRoom.NearestSecond!.Label));
        var change = Assert.Single(choice.SmallestChanges(), change => change.Kind == ChangeKind.LessFaultCurrent);
        Assert.Equal("Reed16-80", change.Label);
        Assert.InRange(change.Factor, 2.28, 2.28 * 1.01);
    }

    [Fact]
    public void Where_one_rule_rules_out_every_part_it_is_named_alone()
    {
        var choice = Choose(Feeder(Plant(), Part(5), 400), Part(10), Part(8), Part(5, volts: 32));
        Assert.Equal(("RAIL0201", null), (choice.NoRoom!.First, choice.NoRoom.Second));
        Assert.Empty(choice.SmallestChanges());
    }

    [Fact]
    public void Without_parts_or_places_nothing_is_found()
    {
        var rail = Feeder(Plant(), Part(5), 400);
        Assert.Empty(Choose(rail).NearMisses);
        Assert.Null(Choose(rail).NoRoom);
        Assert.Empty(PartChoice.At([rail], [], [Part(16)]).Passing);
    }

    /// <summary>Two rails fed by one supply, one of them through a bus; every part tried on a board built anew, by every rule.</summary>
    [Fact]
    public void The_search_finds_what_trying_every_part_finds() =>
        Gen.Int[0, 100_000].Sample(
            seed =>
            {
                var board = new RandomBoard(seed);
                var (rails, place) = board.Build(board.Standing);
                var choice = PartChoice.At(rails, place, board.Table);
                var exhaustive = new PartSearch(Upstream.Rails(rails), [place], board.Table, null, new PartSearch.Exhaustive()).Run(5);
                Assert.Equal(exhaustive.Passing.Select(candidate => (candidate.Index, candidate.SmallestMargin)), choice.Passing.Select(candidate => (candidate.Index, candidate.SmallestMargin)));
                Assert.Equal(exhaustive.NearMisses.Select(miss => (miss.Index, miss.Nearness, miss.RuledOutBy.Length)), choice.NearMisses.Select(miss => (miss.Index, miss.Nearness, miss.RuledOutBy.Length)));

                var alike = Failing(board.Build(null).Rails).Intersect(Failing(rails)).ToHashSet();
                var byHand = board.Table.Where(part => !Failing(board.Build(part).Rails).Except(alike).Any()).Select(part => Array.IndexOf([.. board.Table], part)).ToHashSet();
                Assert.Equal(byHand.Order(), choice.Passing.Select(candidate => candidate.Index).Order());
            },
            iter: 15, threads: 1, seed: "0N0XIzNsQ0O2");

    /// <summary>Every failing check before silencing, as text with its numbers.</summary>
    private static IEnumerable<string> Failing(ImmutableArray<Rail> rails)
    {
        var network = new Network(rails);
        return Registry.All.Where(rule => rule.Description.Severity != RuleSeverity.Off).SelectMany(rule => Engine.Apply(rule, network))
            .Where(check => check.Verdict == Verdict.Fails && !NoJudgement.Contains(check.Rule))
            .Select(check => $"{check.Rule} {check.Rail?.Name} {check.Subject} {check.Message} {check.Margin:R} {check.Demand?.Value:R} {check.Capacity?.Value:R}");
    }

    private sealed class RandomBoard
    {
        private readonly int seed;

        internal RandomBoard(int seed)
        {
            this.seed = seed;
            var random = new Random(seed);
            Table = [.. Enumerable.Range(0, 12).Select(i => Part(
                Math.Round(4 + (40 * random.NextDouble())), random.Next(4) == 0 ? 32 : 80, random.Next(3) == 0 ? 500 : 20_000, 0.1 + random.NextDouble()) with
            {
                PartNumber = $"P{i}",
                ColdResistance = random.Next(4) == 0 ? null : (0.1 * random.NextDouble() / 10).Ohms(),
                RatingBasis = random.Next(4) == 0 ? null : RatingBasis.CarriesThreeQuarters,
                MeltingIntegral = random.Next(4) == 0 ? null : (random.NextDouble() * 400).AmpereSquaredSeconds(),
            })];
            Standing = Part(7) with { PartNumber = "Standing" };
        }

        internal ImmutableArray<Fuse> Table { get; }

        internal Fuse Standing { get; }

        /// <summary>The board with a part in its place; the place is in the feeder or in the bus above it.</summary>
        internal (ImmutableArray<Rail> Rails, Place Place) Build(Fuse? part)
        {
            var random = new Random(seed + 1);
            var plant = Plant();
            var inBus = random.Next(3) == 0;
            var bus = new Rail
            {
                Name = "Bus",
                From = plant,
                Path = [.. inBus ? part is null ? (Element[])[] : [part.As("F1")] : [Part(60).As("F0")], new Busbar("Bar") { Resistance = 0.2.Milliohms() }],
                Return = Return.Mirrored,
                Surroundings = new() { Ambient = Band.Of(0.Celsius(), (20 + random.Next(50)).Celsius()), Altitude = 100.Meters() },
            };
            var feeder = Feeder(random.Next(3) == 0 ? plant : bus, inBus ? Part(16) : part, 50 + random.Next(900), random.Next(2) == 0 ? 1 : 6) with
            {
                Surroundings = random.Next(2) == 0 ? null : bus.Surroundings,
                Policy = random.Next(4) == 0 ? new DesignPolicy { Name = "house", VoltageFraction = 0.8, FuseContinuous = 0.6 } : null,
            };
            if (inBus)
            {
                feeder = feeder with { Path = feeder.Path.SetItem(0, ((Fuse)feeder.Path[0]).As("F9")), Loads = feeder.Loads };
            }

            var sibling = Feeder(bus, Part(10), 50 + random.Next(600), name: "Sibling");
            sibling = sibling with { Path = sibling.Path.SetItem(0, Part(10).As("F2")) };
            var apart = Feeder(new Supply { Name = "Apart", Voltage = 48.Volts(), TransientMax = 48.Volts() }, Part(3), 400, name: "Apart");
            apart = apart with { Path = apart.Path.SetItem(0, Part(3).As("F3")) };
            return ([bus, feeder, sibling, apart], new Place(inBus ? bus : feeder, 0));
        }
    }
}
