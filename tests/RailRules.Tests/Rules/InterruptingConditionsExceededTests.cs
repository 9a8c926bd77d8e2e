using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0306. Row VR-04 of the reference values, and rulebook .</summary>
public sealed class InterruptingConditionsExceededTests
{
    private static Check? Judge(Rail rail) => Apply.Rule<InterruptingConditionsExceeded>(rail).SingleOrDefault();

    /// <summary>VR-04: a loop of 27 µH and 5.4 mΩ has 5 ms (SC-02); a rating proven at 2 ms does not hold.</summary>
    [Theory]
    [InlineData(0.002, Verdict.Fails)]
    [InlineData(0.005, Verdict.Holds)]
    [InlineData(0.010, Verdict.Holds)]
    public void A_loop_slower_than_the_test_fails(double tested, Verdict expected)
    {
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.0054, 27e-6), FaultBoards.Fuse(interrupts: 20_000, timeConstant: tested)))!;
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(0.005, check.Working.Single(step => step.Quantity == "time constant of the loop").Result.Value, 1e-5);
    }

    [Fact]
    public void The_message_names_what_is_proven_and_what_the_place_makes()
    {
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.0054, 27e-6), FaultBoards.Fuse(interrupts: 20_000, timeConstant: 0.002)))!;
        Assert.Equal("'Reed' on rail 'Rail' is proven for 20 kA at 80 V, 2 ms; a fault behind 'Reed' makes 54 V, 5 ms", check.Message);
        Assert.Equal(0.4, check.Margin!.Value, 1e-3);
    }

    /// <summary>1 kA at 32 V says nothing of 60 V (rulebook R-06).</summary>
    [Fact]
    public void A_lower_voltage_fails_and_ratings_are_not_interpolated()
    {
        var low = FaultBoards.Fuse() with { InterruptingRatings = [new() { Current = 5.Kiloamperes(), Voltage = 32.Volts() }] };
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(60, 0.06), low))!;
        Assert.Equal((Verdict.Fails, 32.0, 60.0), (check.Verdict, check.Capacity!.Value.Value, check.Demand!.Value.Value));
        var both = low with { InterruptingRatings = [.. low.InterruptingRatings, new() { Current = 500.Amperes(), Voltage = 80.Volts() }] };
        Assert.Equal(Verdict.Fails, Judge(FaultBoards.Rail(FaultBoards.Battery(60, 0.06), both))!.Verdict);
        Assert.Equal(Verdict.Holds, Judge(FaultBoards.Rail(FaultBoards.Battery(60, 0.2), both))!.Verdict);
    }

    /// <summary>A choke behind the fuse: the fault behind it decides (case-081).</summary>
    [Fact]
    public void The_fault_behind_a_choke_decides()
    {
        var choke = new Inductor { Name = "Choke", Inductance = 200.Microhenries(), Resistance = 0.Ohms() };
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(109, 0.008, 5e-6), FaultBoards.Fuse(200, 20_000, 125, 0.010), choke))!;
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Contains("a fault behind 'Choke' makes 109 V, 25.6 ms", check.Message);
    }

    /// <summary>Without a stated time constant a rating counts up to 1 ms.</summary>
    [Fact]
    public void A_rating_without_time_constant_is_credited_for_fast_loops_only()
    {
        Assert.Equal(Verdict.Holds, Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.06, 60e-6), FaultBoards.Fuse()))!.Verdict);
        var slow = Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.06, 120e-6), FaultBoards.Fuse()))!;
        Assert.Equal(Verdict.Undecided, slow.Verdict);
        Assert.Contains("TimeConstant", slow.Names());
    }

    [Fact]
    public void Without_a_stated_voltage_it_is_undecided()
    {
        var fuse = FaultBoards.Fuse() with { InterruptingRatings = [new() { Current = 10.Kiloamperes() }] };
        Assert.Contains("Voltage", Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.06), fuse))!.Names());
    }

    [Fact]
    public void No_check_where_the_source_gives_no_more_than_the_rated_current_or_RAIL0301_fails()
    {
        Assert.Null(Judge(FaultBoards.Rail(FaultBoards.Limited(54, 25), FaultBoards.Fuse(volts: 32))));
        Assert.Null(Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.006), FaultBoards.Fuse(volts: 32))));
        Assert.Null(Judge(FaultBoards.Rail(FaultBoards.Battery(54, 0.06), new Fuse())));
    }

    /// <summary>A wire of which only the length is known: its loop has 0.2 to 2 µH/m; where that matters it is undecided.</summary>
    [Fact]
    public void Inductance_is_bounded_by_length()
    {
        Rail With(double tested) => FaultBoards.Rail(
            FaultBoards.Battery(54, 0.01), FaultBoards.Fuse(interrupts: 20_000, timeConstant: tested), new Wire { Name = "Run", Length = 20.Meters(), Resistance = 0.01.Ohms(), Ampacity = 100.Amperes() });
        Assert.Equal(Verdict.Holds, Judge(With(0.002))!.Verdict);
        var open = Judge(With(0.001))!;
        Assert.Equal(Verdict.Undecided, open.Verdict);
        Assert.Contains("Inductance", open.Names());
        Assert.Equal(Verdict.Fails, Judge(With(0.0001))!.Verdict);
    }
}
