using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>Applies one rule to boards made for a test; parts and boards are invented.</summary>
internal static class Apply
{
    internal static readonly Return NoReturn = Return.OfResistance(0.Ohms());

    internal static readonly Surroundings Bench = At(25);

    internal static ImmutableArray<Check> Rule<T>(params Rail[] rails)
        where T : Rule, new() => [.. new T().Apply(new Network(rails))];

    /// <summary>The checks of a rule where some data were written but could not be worked out.</summary>
    internal static ImmutableArray<Check> WithUnknown<T>(object owner, string datum, params Rail[] rails)
        where T : Rule, new() => [.. new T().Apply(new Network(rails, (one, name) => ReferenceEquals(one, owner) && name == datum))];

    internal static Check Of(this IEnumerable<Check> checks, object part) => Assert.Single(checks, check => ReferenceEquals(check.Part, part));

    internal static Surroundings At(double celsius, double meters = 0) => new() { Ambient = Band.Of(0.Celsius(), celsius.Celsius()), Altitude = meters.Meters() };

    /// <summary>A rail of one part and one constant current, with nothing else in doubt.</summary>
    internal static Rail Carrying(double amperes, Element part, Surroundings? surroundings = null, DesignPolicy? policy = null, double volts = 48) => new("Rail")
    {
        From = new Supply { Name = "Source", Voltage = volts.Volts(), TransientMax = volts.Volts(), ContinuousCurrent = 1.Kiloamperes(), ProspectiveFault = new() { Current = 2.Kiloamperes(), TimeConstant = 1.Milliseconds() } },
        Path = [part],
        Return = NoReturn,
        Loads = [new("Rail") { Current = amperes.Amperes() }],
        Surroundings = surroundings ?? Bench,
        Policy = policy,
    };

    /// <summary>The data that an undecided check names.</summary>
    internal static IEnumerable<string?> Names(this Check check) => check.Missing.Select(one => one.Place.Datum);
}
