using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0106. Breakers marked for polarity: IEC 60947-2 (from memory).</summary>
public sealed class OneDirectionDeviceTests
{
    private static readonly Supply Shelf = new() { Name = "Shelf", Voltage = 54.Volts() };

    private static readonly Battery String = new() { Name = "String", OpenCircuitVoltage = 50.Volts(), InternalResistance = 20.Milliohms() };

    private static Rail Joined(Element[] first, Element[] second) => new("Rail") { Feeds = [new() { From = Shelf, Path = [.. first] }, new() { From = String, Path = [.. second] }] };

    private static Check? Judge(Element device, params Rail[] rails) => Apply.Rule<OneDirectionDevice>(rails).SingleOrDefault(check => ReferenceEquals(check.Part, device));

    [Theory]
    [InlineData(true, null, Verdict.Fails)]
    [InlineData(false, null, Verdict.Holds)]
    [InlineData(null, true, Verdict.Holds)]
    [InlineData(null, false, Verdict.Fails)]
    [InlineData(null, null, Verdict.Undecided)]
    public void A_polarized_breaker_in_a_feed_fails(bool? polarized, bool? reverse, Verdict expected)
    {
        var breaker = new CircuitBreaker { Name = "Q1", Polarized = polarized, ReverseAllowed = reverse };
        var check = Judge(breaker, Joined([breaker], []))!;
        Assert.Equal(expected, check.Verdict);
        if (expected == Verdict.Fails)
        {
            Assert.Equal("'Q1' on rail 'Rail' works one way only; 'String' can drive 2.5 kA back through it", check.Message);
        }
    }

    [Theory]
    [InlineData(true, Verdict.Holds)]
    [InlineData(false, Verdict.Fails)]
    [InlineData(null, Verdict.Undecided)]
    public void An_electronic_fuse_must_block(bool? blocking, Verdict expected)
    {
        var device = new ElectronicFuse { Name = "U1", ReverseBlocking = blocking };
        Assert.Equal(expected, Judge(device, Joined([device], []))!.Verdict);
    }

    [Fact]
    public void A_single_source_capacitors_and_a_diode_in_series_ask_for_nothing()
    {
        var breaker = new CircuitBreaker { Polarized = true };
        Assert.Null(Judge(breaker, new Rail { From = Shelf, Path = [breaker], Capacitors = [new()], Loads = [new()] }));
        Assert.Null(Judge(breaker, Joined([breaker, new BlockingDiode()], [])));
        Assert.NotNull(Judge(breaker, Joined([breaker], [new BlockingDiode()])));
    }

    [Fact]
    public void Sources_further_down_and_regenerating_loads_count()
    {
        var breaker = new CircuitBreaker { Polarized = true };
        var bus = new Rail("Bus") { From = Shelf, Path = [breaker] };
        var below = new Rail("Below") { Feeds = [new() { From = bus }, new() { From = String }] };
        Assert.Equal(Verdict.Fails, Judge(breaker, bus, below)!.Verdict);
        Assert.Null(Judge(breaker, bus, new Rail { Feeds = [new() { From = bus, Path = [new BlockingDiode()] }, new() { From = String }] }));
        var drive = new Rail { From = Shelf, Path = [breaker], Loads = [new() { Name = "drive", Regenerates = true, RegeneratedCurrent = 12.Amperes() }] };
        Assert.Equal(12, Judge(breaker, drive)!.Demand!.Value.Value);
    }

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, Verdict.Fails)]
    [InlineData(null, Verdict.Undecided)]
    public void A_converter_that_does_not_block_lets_the_far_side_through(bool? blocking, Verdict? expected)
    {
        var breaker = new CircuitBreaker { Polarized = true };
        var bus = new Rail("Bus") { From = Shelf, Path = [breaker] };
        var converter = new Converter { Name = "Link", Input = bus, Output = 12.Volts(), ReverseBlocking = blocking };
        var far = new Rail("Far") { Feeds = [new() { From = converter }, new() { From = String }] };
        Assert.Equal(expected, Judge(breaker, far)?.Verdict);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var breaker = new CircuitBreaker { Polarized = true };
        var rail = Joined([breaker], []);
        Assert.Equal([nameof(CircuitBreaker.Polarized)], Apply.WithUnknown<OneDirectionDevice>(breaker, nameof(CircuitBreaker.Polarized), rail).Of(breaker).Names());
        Assert.Contains(Apply.WithUnknown<OneDirectionDevice>(rail, nameof(Rail.Feeds), rail), check => check.Verdict == Verdict.Undecided);
    }
}
