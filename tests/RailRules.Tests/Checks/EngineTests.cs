using System.Collections.Immutable;
using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Checks;

/// <summary>The engine: order, one finding a cause, odd models.</summary>
public sealed class EngineTests
{
    /// <summary>Stands in for rules that are built later, so that the table of silencing is tested whole.</summary>
    private sealed class Stub(string id, params Check[] checks) : Rule
    {
        public override RuleDescription Description { get; } = new(id, id, RuleSeverity.Error, id);

        public override IEnumerable<Check> Apply(Network network) => checks;
    }

    private static readonly Rail TheRail = new() { Name = "Rail" };

    private static readonly Rail Below = new() { Name = "Below", From = TheRail };

    private static readonly Fuse Part = new();

    private static Check Of(string rule, Verdict verdict, int place = 0, object? part = null, Rail? rail = null) => new(rule, "", verdict, null, "")
    {
        Rail = rail ?? TheRail,
        Part = part ?? Part,
        Places = [new DatumPlace(rail ?? TheRail, nameof(Rail.Path), place), new DatumPlace(Part, nameof(Fuse.RatedCurrent))],
    };

    private static IEnumerable<string> Left(params Check[] checks) => Engine
        .Check(new Network([TheRail, Below]), [.. checks.GroupBy(check => check.Rule).Select(group => new Stub(group.Key, [.. group]))])
        .Select(check => check.Rule);

    [Theory]
    [InlineData("RAIL0102", "RAIL0101")]
    [InlineData("RAIL0102", "RAIL0301")]
    [InlineData("RAIL0102", "RAIL0306")]
    [InlineData("RAIL0504", "RAIL0201")]
    [InlineData("RAIL0504", "RAIL0501")]
    [InlineData("RAIL0206", "RAIL0201")]
    [InlineData("RAIL0204", "RAIL0308")]
    [InlineData("RAIL0302", "RAIL0303")]
    [InlineData("RAIL0307", "RAIL0204")]
    [InlineData("RAIL0307", "RAIL0304")]
    [InlineData("RAIL0307", "RAIL0308")]
    public void A_cause_silences_its_consequences(string cause, string consequence)
    {
        Assert.Equal([cause], Left(Of(cause, Verdict.Fails), Of(consequence, Verdict.Undecided)));
        Assert.Equal(2, Left(Of(cause, Verdict.Holds), Of(consequence, Verdict.Undecided)).Count());
        Assert.Equal(cause == "RAIL0504" ? 1 : 2, Left(Of(cause, Verdict.Fails), Of(consequence, Verdict.Fails, place: 1)).Count());
        Assert.Equal(cause == "RAIL0504" ? 1 : 2, Left(Of(cause, Verdict.Fails), Of(consequence, Verdict.Fails, part: new Fuse())).Count());
    }

    [Fact]
    public void A_contradictory_datum_silences_what_rests_on_it()
    {
        var faulty = Of("RAIL0003", Verdict.Fails) with { Places = [new DatumPlace(TheRail, nameof(Rail.Path), 0), new DatumPlace(Part, nameof(Fuse.RatedCurrent))] };
        var rests = Of("RAIL0201", Verdict.Holds);
        var other = Of("RAIL0203", Verdict.Holds) with { Places = [new DatumPlace(TheRail, nameof(Rail.Path), 0), new DatumPlace(Part, nameof(Fuse.OperatingTemperature))] };
        Assert.Equal(["RAIL0003", "RAIL0203"], Left(faulty, rests, other));
        var works = other with { Working = [new("rating", "", "", new Figure(1, "A"), "", new DatumPlace(Part, nameof(Fuse.RatedCurrent)))] };
        Assert.Equal(["RAIL0003"], Left(faulty, works));
    }

    [Fact]
    public void A_contradictory_load_silences_the_currents_of_the_whole_board_part()
    {
        var load = new Load { Power = Band.Of(100.Watts(), 50.Watts()) };
        var fuse = new Fuse { RatedCurrent = 20.Amperes() };
        var bus = new Rail { Name = "Bus", From = new Supply { Voltage = 48.Volts() }, Path = [fuse], Return = Return.Mirrored };
        var checks = Engine.Check([new Rail { Name = "Branch", From = bus, Loads = [load], Return = Return.Mirrored }]);
        Assert.Contains(checks, check => check.Rule == "RAIL0003" && check.Verdict == Verdict.Fails);
        Assert.DoesNotContain(checks, check => check.Rule == "RAIL0201");
        Assert.Contains(checks, check => check.Rule == "RAIL0102" && ReferenceEquals(check.Part, fuse));
    }

    [Fact]
    public void A_broken_rail_silences_itself_and_all_below()
    {
        var topology = new Check("RAIL0007", "", Verdict.Fails, null, "") { Rail = TheRail, Places = [new DatumPlace(TheRail, nameof(Rail.From))] };
        Assert.Equal(["RAIL0007"], Left(topology, Of("RAIL0201", Verdict.Undecided), Of("RAIL0201", Verdict.Undecided, rail: Below)));
        var designator = topology with { Places = [new DatumPlace(Part, nameof(Element.Designator))] };
        Assert.Equal(2, Left(designator, Of("RAIL0201", Verdict.Undecided)).Count());
    }

    [Fact]
    public void Checks_come_in_order_of_rail_and_rule()
    {
        var checks = Engine.Check([new Rail { Name = "A", From = new Supply { Voltage = 48.Volts() }, Path = [new Fuse()], Loads = [new()] }, new Rail { Name = "B", From = TheRail, Path = [new Fuse()] }]);
        var order = checks.Select(check => (new[] { "A", "B", "Rail" }.ToList().IndexOf(check.Rail!.Name), check.Rule)).ToList();
        Assert.Equal(order.OrderBy(pair => pair.Item1).ThenBy(pair => pair.Rule, StringComparer.Ordinal), order);
    }

    /// <summary>A number that cannot be converted between units makes UnitsNet throw; no check that would need it is passed, and nothing is thrown.</summary>
    [Fact]
    public void Numbers_too_large_to_convert_are_not_passed()
    {
        var huge = new Rail { From = new Supply { Voltage = ElectricPotential.FromMegavolts(1e305) }, Path = [new Fuse { DcVoltageRating = 80.Volts() }], Loads = [new() { Power = 1.Watts() }] };
        Assert.DoesNotContain(Engine.Check([huge]), check => check.Rule is "RAIL0101" or "RAIL0201" && check.Verdict == Verdict.Holds && check.Part is Fuse);
    }

    /// <summary>Randomly incomplete, empty and odd boards: the engine never throws, and whatever is undecided names what it lacks.</summary>
    [Fact]
    public void Odd_boards_are_checked_without_throwing() => Gen.Int[1, 1 << 30].Sample(seed =>
    {
        var random = new Random(seed);
        var rails = new List<Rail>();
        Source? Feeding() => random.Next(8) switch
        {
            0 => null,
            1 => new Supply(),
            2 => new Battery { OpenCircuitVoltage = 48.Volts(), InternalResistance = random.Next(2) == 0 ? 10.Milliohms() : null, ChargeCurrent = random.Next(2) == 0 ? 5.Amperes() : null },
            3 => new Converter { Input = Pick(), Output = 12.Volts(), Efficiency = random.Next(2) == 0 ? 0.9.DecimalFractions() : null },
            4 or 5 => Pick() ?? (Source)new Supply { Voltage = 48.Volts() },
            _ => new Supply { Voltage = Band.Of(43.Volts(), 57.Volts()), CurrentLimit = random.Next(2) == 0 ? new() { Level = 30.Amperes() } : null },
        };
        Rail? Pick() => rails.Count == 0 ? null : rails[random.Next(rails.Count)];
        Element Some() => random.Next(12) switch
        {
            0 => new Fuse { RatedCurrent = random.Next(2) == 0 ? 20.Amperes() : null, Derating = random.Next(2) == 0 ? [new(25.Celsius(), 1), null!] : default },
            1 => new CircuitBreaker { RatedCurrent = 0.Amperes() },
            2 => new ElectronicFuse { TripLevel = Band.Of(30.Amperes(), 10.Amperes()) },
            3 => new Wire { Length = (-1).Meters(), Section = Area.FromSquareMillimeters(random.Next(2)) },
            4 => new Trace { Width = 1.Millimeters(), Thickness = 35.Micrometers(), Length = 50.Millimeters(), Inner = random.Next(2) == 0 ? true : null },
            5 => new Connector { Contacts = random.Next(3) - 1 },
            6 => new BlockingDiode(),
            7 => new ParallelGroup { Branches = random.Next(2) == 0 ? default : [[], default, [new Fuse()], [null!]] },
            8 => new Switch { SafeOperatingArea = new() },
            9 => new InrushLimiter { ColdResistance = 1.Ohms() },
            10 => new Inductor { RatedCurrent = 5.Amperes() },
            _ => null!,
        };
        for (var i = random.Next(1, 6); i > 0; i--)
        {
            rails.Add(new Rail
            {
                Name = random.Next(5) == 0 ? null! : $"R{i}",
                From = random.Next(2) == 0 ? Feeding() : null,
                Feeds = random.Next(4) switch { 0 => default, 1 => [new() { From = Feeding(), Path = [Some()] }, new() { From = Feeding(), Return = Return.Mirrored }, null!], _ => [] },
                FeedsNeeded = random.Next(4) - 1,
                Path = random.Next(5) == 0 ? default : [.. Enumerable.Range(0, random.Next(4)).Select(_ => Some())],
                Return = random.Next(3) switch { 0 => null, 1 => Return.Mirrored, _ => Return.Of(Some()) },
                Loads = random.Next(4) == 0 ? default : [new() { Power = random.Next(2) == 0 ? 100.Watts() : null, MinVoltage = random.Next(2) == 0 ? 36.Volts() : null, Resistance = random.Next(3) == 0 ? 0.Ohms() : null, Pulses = [null!, new() { Period = 1.Seconds() }] }, null!],
                Clamps = random.Next(2) == 0 ? [new(), null!] : default,
                Capacitors = random.Next(2) == 0 ? [new(), null!] : default,
                Surroundings = random.Next(2) == 0 ? new() { Ambient = Band.Of(60.Celsius(), 20.Celsius()) } : null,
            });
        }

        // The same question gets the same answer, as from the analyzer.
        var answers = new Dictionary<DatumPlace, bool>();
        bool IsUnknown(object owner, string datum)
        {
            var place = new DatumPlace(owner, datum);
            return answers.TryGetValue(place, out var known) ? known : answers[place] = random.Next(20) == 0;
        }

        var checks = random.Next(3) == 0 ? Engine.Check(rails, IsUnknown) : Engine.Check(rails);
        foreach (var check in checks)
        {
            Assert.False(string.IsNullOrWhiteSpace(check.Message));
            Assert.True(check.Verdict != Verdict.Undecided || check.Missing.Length > 0, $"{check.Rule} {check.Message}");
            Assert.False(check.Demand is { } demand && double.IsNaN(demand.Value), check.Message);
            Assert.False(check.Margin is { } margin && double.IsNaN(margin), check.Message);
        }
    }, iter: 600);

    /// <summary>What half-typed code makes of a team's rule: nulls where texts, arrays and checks belong. Nothing throws, and nothing is lost.</summary>
    [Fact]
    public void Nulls_of_a_rule_of_the_teams_own_are_said()
    {
        var empty = new Check(null!, null!, Verdict.Fails, null, null!) { Basis = null!, Corner = null!, Places = default, Working = default, Missing = default, Assumptions = default };
        var rules = ImmutableArray.Create(
            DesignRule.OfRail("LOCK001", "First", FindingSeverity.Error, rail => [null!, empty, Check.That(false, "no owner") with { Places = [new(null!, "Path", 0), new(rail)], Working = [null!, new("step", "", "", default, "", new DatumPlace(null!))], Missing = [null!], Assumptions = [null!] }]),
            DesignRule.OfRail("LOCK002", "Second", FindingSeverity.Error, _ => null!));
        var checks = Engine.Check([new Rail("Fed") { From = new Supply("Plant") { Voltage = 12.Volts() } }], new CheckOptions { DesignRules = rules });
        Assert.Equal([Verdict.Undecided, Verdict.Fails, Verdict.Fails], checks.Where(check => check.Rule == "LOCK001").Select(check => check.Verdict));
        Assert.Equal(["First", "no owner"], checks.Where(check => check is { Rule: "LOCK001", Verdict: Verdict.Fails }).Select(check => check.Message));
        Assert.All(checks.SelectMany(check => check.Places.Concat(check.Working.Select(step => step.Place).OfType<DatumPlace>())), place => Assert.NotNull(place.Owner));
        Assert.Contains("gave null in place of a check", checks.Single(check => check.Rule == "LOCK002").Message, StringComparison.Ordinal);
        Assert.Contains(checks, check => check.Rule == "RAIL0004" && check.Message.Contains("LOCK002", StringComparison.Ordinal));
    }
}
