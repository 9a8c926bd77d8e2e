using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0007. Expected findings follow from the drawings described in each test.</summary>
public sealed class BrokenTopologyTests
{
    private static readonly Supply Plant = new("Plant") { Voltage = 54.Volts() };

    private static List<Check> Fails(params Rail[] rails) => [.. new BrokenTopology().Apply(new Network(rails)).Where(check => check.Verdict == Verdict.Fails)];

    [Fact]
    public void A_tree_holds_rail_by_rail()
    {
        var bus = new Rail("Bus") { From = Plant, Path = [new Fuse().As("F1")] };
        var left = new Rail("Left") { From = bus, Path = [new Fuse().As("F2")] };
        var right = new Rail("Right") { From = new Converter("Brick") { Input = bus }, Path = [new Fuse().As("F3")] };
        var checks = new BrokenTopology().Apply(new Network([bus, left, right])).ToList();
        Assert.Equal([bus, left, right], checks.Select(check => check.Rail));
        Assert.All(checks, check => Assert.Equal(Verdict.Holds, check.Verdict));
    }

    [Fact]
    public void A_rail_that_feeds_itself_is_found()
    {
        var bus = new Rail("Bus");
        ContradictoryDatumTests.Set(bus, bus);
        var check = Assert.Single(Fails(bus));
        Assert.Equal("'Bus' feeds itself through itself alone", check.Message);
        Assert.Equal(new DatumPlace(bus, "From"), check.Places[0]);
    }

    [Fact]
    public void A_circle_through_feeds_and_a_converter_is_found_once_and_the_rails_below_it_are_not_blamed()
    {
        var top = new Rail("Top");
        var middle = new Rail("Middle") { Feeds = [new() { From = Plant }, new() { From = top }] };
        var brick = new Converter("Brick") { Input = middle };
        var below = new Rail("Below") { From = middle };
        ContradictoryDatumTests.Set(top, brick);
        var check = Assert.Single(Fails(below, top, middle));
        Assert.Equal("'Top' feeds itself through 'Brick', 'Middle'", check.Message);
        Assert.Equal([new DatumPlace(top, "From"), new DatumPlace(middle, "Feeds")], check.Places.AsEnumerable());
        Assert.Equal(Verdict.Holds, new BrokenTopology().Apply(new Network([below, top, middle])).Single(other => other.Rail == below).Verdict);
    }

    [Fact]
    public void Two_circles_give_two_findings()
    {
        var a = new Rail("A");
        var b = new Rail("B") { From = a };
        var c = new Rail("C");
        var d = new Rail("D") { From = c };
        ContradictoryDatumTests.Set(a, b);
        ContradictoryDatumTests.Set(c, d);
        Assert.Equal(["'A' feeds itself through 'B'", "'C' feeds itself through 'D'"], Fails(a, b, c, d).Select(check => check.Message));
    }

    [Fact]
    public void A_rail_without_source_is_found_also_above_the_rails_given()
    {
        var bus = new Rail("Bus");
        var sled = new Rail("Sled") { From = bus };
        var check = Assert.Single(Fails(sled));
        Assert.Equal("'Bus' has no source; state From, or Feeds where there are several", check.Message);
        Assert.Same(bus, check.Rail);
    }

    [Fact]
    public void A_feed_without_source_is_found()
    {
        var empty = new Feed();
        var bus = new Rail("Bus") { Feeds = [new() { From = Plant }, empty] };
        var check = Assert.Single(Fails(bus));
        Assert.Equal("'Bus' has no source in feed 2; state its From", check.Message);
        Assert.Equal([new DatumPlace(empty, "From"), new DatumPlace(bus, "Feeds", 1)], check.Places.AsEnumerable());
        Assert.Equal("'Bus' has no source in feed 1: the feed is null", Assert.Single(Fails(new Rail("Bus") { Feeds = [null!] })).Message);
    }

    [Fact]
    public void A_source_that_could_not_be_worked_out_is_not_absent()
    {
        var bus = new Rail("Bus");
        Assert.Empty(new BrokenTopology().Apply(new Network([bus], (owner, datum) => ReferenceEquals(owner, bus) && datum == nameof(Rail.From))));
        var feed = new Feed();
        var fed = new Rail("Fed") { Feeds = [feed] };
        Assert.All(new BrokenTopology().Apply(new Network([fed], (owner, datum) => ReferenceEquals(owner, feed) && datum == nameof(Feed.From))), check => Assert.Equal(Verdict.Holds, check.Verdict));
    }

    [Fact]
    public void From_and_Feeds_together_are_found()
    {
        var bus = new Rail("Bus") { From = Plant, Feeds = [new() { From = Plant }] };
        Assert.Equal("'Bus' has both From ('Plant') and Feeds; a rail has one source or a list of feeds, so make 'Plant' a feed too", Assert.Single(Fails(bus)).Message);
    }

    [Fact]
    public void One_designator_on_two_rails_is_found_wherever_it_stands()
    {
        var fuse = new Fuse();
        var lug = new Connector();
        var clamp = new TransientSuppressor { Designator = "X1" };
        var capacitor = new Capacitor { Designator = "X1" };
        var group = new ParallelGroup { Branches = [[fuse], [new ParallelGroup { Branches = [[fuse.As("X1")]] }]] };
        var first = new Rail("First") { From = Plant, Path = [fuse.As("X1")] };
        Rail[] others =
        [
            new("Path") { From = Plant, Path = [lug, lug.As("X1")] },
            new("Group") { From = Plant, Path = [group] },
            new("Return") { From = Plant, Return = Return.Of(lug.As("X1")) },
            new("Feed") { Feeds = [new() { From = Plant, Path = [fuse.As("X1")] }] },
            new("FeedReturn") { Feeds = [new() { From = Plant, Return = Return.Of(lug.As("X1")) }] },
            new("Clamp") { From = Plant, Clamps = [clamp] },
            new("Capacitor") { From = Plant, Capacitors = [capacitor] },
        ];
        foreach (var other in others)
        {
            var check = Assert.Single(Fails(first, other));
            Assert.Equal($"'First' and '{other.Name}' both contain X1", check.Message);
            Assert.Contains(new DatumPlace(first, "Path", 0), check.Places);
        }

        Assert.Equal(others.Length, Fails([first, .. others]).Count);
    }

    [Fact]
    public void One_designator_twice_on_a_rail_is_found() =>
        Assert.Equal("'Bus' contains F1 twice", Assert.Single(Fails(new Rail("Bus") { From = Plant, Path = [new Fuse().As("F1"), new Connector().As("F1")] })).Message);

    [Fact]
    public void A_part_without_designator_may_stand_anywhere_and_a_shared_return_is_one_conductor()
    {
        var lug = new Connector();
        var shared = Return.Of(lug.As("J1"), lug);
        Assert.Empty(Fails(
            new Rail("Left") { From = Plant, Path = [lug, lug], Return = shared },
            new Rail("Right") { From = Plant, Path = [lug], Return = shared },
            new Rail("Mirrored") { From = Plant, Path = [lug.As("J2")], Return = Return.Mirrored },
            new Rail("Alternate") { From = Plant, Path = [new Fuse { Alternates = [new Fuse { Designator = "F9" }] }.As("F9")] }));
    }

    [Fact]
    public void Ten_thousand_rails_in_a_chain_and_in_a_circle_need_no_deep_stack()
    {
        var rail = new Rail("R0") { From = Plant };
        var rails = new List<Rail> { rail };
        for (var index = 1; index < 10_000; index++)
        {
            rails.Add(rail = new Rail($"R{index}") { From = rail });
        }

        Assert.Empty(Fails([.. rails]));
        ContradictoryDatumTests.Set(rails[0], rail);
        Assert.Equal("'R0' feeds itself through 'R9999', 'R9998', 'R9997', 'R9996', 'R9995' and 9994 more", Assert.Single(Fails([.. rails])).Message);
    }
}
