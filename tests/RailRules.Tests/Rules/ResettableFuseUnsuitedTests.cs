using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0404. Hold current against temperature: case-045 and check values PP-01 to PP-04; reset by power matching, R-30.</summary>
public sealed class ResettableFuseUnsuitedTests
{
    private static ResettableFuse Part(double hold, double at60) => new()
    {
        Name = "F1",
        HoldCurrent = hold.Amperes(),
        TripCurrent = (2 * hold).Amperes(),
        ReferenceAmbient = 23.Celsius(),
        Derating = [new(0.Celsius(), 1.1), new(23.Celsius(), 1), new(60.Celsius(), at60)],
        Resistance = 0.1.Ohms(),
    };

    private static Check Of(string datum, Rail rail) => Apply.Rule<ResettableFuseUnsuited>(rail).Single(check => check.Subject.EndsWith(datum, StringComparison.Ordinal));

    [Theory] // case-045: 0.35 A and 0.54 A are held at 60 °C
    [InlineData(0.5, 0.35, Verdict.Fails)]
    [InlineData(0.75, 0.54, Verdict.Holds)]
    public void It_must_hold_the_load_in_the_hottest_air(double hold, double at60, Verdict expected)
    {
        var check = Of(nameof(ResettableFuse.HoldCurrent), Apply.Carrying(0.5, Part(hold, at60 / hold), Apply.At(60), volts: 5));
        Assert.Equal((expected, 0.5), (check.Verdict, check.Demand!.Value.Value));
        Assert.Equal(at60, check.Capacity!.Value.Value, 1e-9);
    }

    [Theory]
    [InlineData(1.2, Verdict.Holds)]
    [InlineData(0.6, Verdict.Fails)]
    public void It_resets_under_load_if_the_load_leaves_it_too_little(double watts, Verdict expected)
    {
        var rail = Apply.Carrying(0.25, Part(0.5, 0.7) with { TrippedPower = watts.Watts() }, volts: 12) with { RequiresSelfReset = true };
        var check = Of(nameof(ResettableFuse.TrippedPower), rail);
        Assert.Equal((expected, 0.75), (check.Verdict, Math.Round(check.Demand!.Value.Value, 9)));
        Assert.DoesNotContain(Apply.Rule<ResettableFuseUnsuited>(rail with { RequiresSelfReset = null }), one => one.Subject.EndsWith(nameof(ResettableFuse.TrippedPower), StringComparison.Ordinal));
    }

    /// <summary>Hotter air never lets it hold more.</summary>
    [Fact]
    public void Hotter_is_never_better() => Gen.Select(Gen.Double[5, 60], Gen.Double[0, 20]).Sample((celsius, more) =>
    {
        double Holds(double hottest) => Of(nameof(ResettableFuse.HoldCurrent), Apply.Carrying(0.1, Part(0.5, 0.7), Apply.At(hottest), volts: 5)).Capacity!.Value.Value;
        return Holds(Math.Min(60, celsius + more)) <= Holds(celsius) * (1 + 1e-9);
    });
}
