using System.Collections.Immutable;

namespace RailRules;

/// <summary>One cause, one finding: checks that say again what another check has found are left out.</summary>
internal static class Silencing
{
    /// <summary>A failing check of the first rule silences checks of the others, of the same thing or of the whole rail.</summary>
    private static readonly (string Rule, string[] Silenced, bool WholeRail)[] Table =
    [
        ("RAIL0102", ["RAIL0101", "RAIL0301", "RAIL0306"], false),
        ("RAIL0504", ["RAIL0201", "RAIL0501"], true),
        ("RAIL0206", ["RAIL0201"], false),
        ("RAIL0204", ["RAIL0308"], false),
        ("RAIL0302", ["RAIL0303"], false),
        ("RAIL0307", ["RAIL0204", "RAIL0304", "RAIL0308"], false),
    ];

    /// <summary>Collections: a place in one says where a thing stands, not that the collection is at fault.</summary>
    private static readonly HashSet<string> Collections =
    [
        nameof(Rail.Path), nameof(Rail.Feeds), nameof(Rail.Loads), nameof(Rail.Clamps), nameof(Rail.Capacitors), nameof(Rail.Return), nameof(Rail.From), nameof(Converter.Input),
    ];

    internal static ImmutableArray<Check> Apply(Network network, ImmutableArray<Check> checks)
    {
        var failing = checks.Where(check => check.Verdict == Verdict.Fails).ToList();
        if (failing.Count == 0)
        {
            return checks;
        }

        var things = new HashSet<(string Rule, DatumPlace Place, object? Part)>();
        var rails = new HashSet<(string Rule, Rail Rail)>();
        foreach (var check in failing)
        {
            foreach (var (_, silenced, wholeRail) in Table.Where(row => row.Rule == check.Rule))
            {
                foreach (var rule in silenced)
                {
                    if (wholeRail && check.Rail is not null)
                    {
                        rails.Add((rule, check.Rail));
                    }
                    else if (!wholeRail && check.Places.Length > 0)
                    {
                        things.Add((rule, check.Places[0], check.Part));
                    }
                }
            }
        }

        // A load at the end of a bare conductor is unprotected for the same reason as the conductor.
        var bare = new HashSet<Rail>(failing.Where(check => check is { Rule: "RAIL0307", Rail: not null } && StandsIn(check, nameof(Rail.Path))).Select(check => check.Rail!));
        var data = FaultyData(failing);
        var broken = BrokenRails(network, failing);
        return
        [
            .. checks.Where(check =>
                !(check.Places.Length > 0 && things.Contains((check.Rule, check.Places[0], check.Part)))
                && !(check.Rail is not null && rails.Contains((check.Rule, check.Rail)))
                && !IsNamedAlready(check, failing)
                && !(check is { Rule: "RAIL0307", Verdict: Verdict.Fails, Rail: { } rail } && bare.Contains(rail) && StandsIn(check, nameof(Rail.Loads)))
                && (check.Rule is "RAIL0003" or "RAIL0007" || !(DependsOn(network, check, data) || (check.Rail is not null && broken.Contains(check.Rail))))),
        ];
    }

    /// <summary>Currents through an element that RAIL0302, 0303 or 0304 name are not named again by RAIL0308, nor by RAIL0304 those of RAIL0303.</summary>
    private static bool IsNamedAlready(Check check, List<Check> failing) =>
        check is { Verdict: Verdict.Fails, Rule: "RAIL0304" or "RAIL0308", Named.Length: > 0 } && check.Named.All(own => failing.Any(other => other.Rule switch
        {
            "RAIL0302" => check.Rule == "RAIL0308" && Names(other, own, named => named.Currents.High >= own.Currents.High * (1 - 1e-3)),
            "RAIL0303" => Names(other, own, named => Contains(own.Currents, named.Currents.Low)),
            "RAIL0304" => check.Rule == "RAIL0308" && Names(other, own, named => Contains(own.Currents, named.Currents.Low)),
            _ => false,
        }));

    private static bool Names(Check other, NamedCurrents own, Func<NamedCurrents, bool> alike) =>
        other.Named.Any(named => named.Place.Equals(own.Place) && ReferenceEquals(named.Element, own.Element) && alike(named));

    private static bool Contains(Range range, double current) => current >= range.Low * (1 - 1e-3) && current <= range.High * (1 + 1e-3);

    private static bool StandsIn(Check check, string collection) => check.Places.Length > 0 && check.Places[0].Datum == collection;

    private static HashSet<DatumPlace> FaultyData(List<Check> failing) =>
        [.. failing.Where(check => check.Rule == "RAIL0003").SelectMany(check => check.Places).Where(place => place.Datum is not null && !Collections.Contains(place.Datum)).Select(place => place with { Index = null })];

    private static bool DependsOn(Network network, Check check, HashSet<DatumPlace> data)
    {
        if (data.Count == 0)
        {
            return false;
        }

        bool IsFaulty(DatumPlace place) => data.Contains(place with { Index = null });
        return check.Places.Any(IsFaulty)
            || check.Working.Any(step => step.Place is { } place && IsFaulty(place))
            || (check.UsesOperatingPoint && check.Rail is not null && data.Any(place => network.OperatingPointReads(check.Rail, place)));
    }

    /// <summary>Rails whose feeding is at fault, and all that they feed. A designator that stands twice spoils no number.</summary>
    private static HashSet<Rail> BrokenRails(Network network, List<Check> failing)
    {
        var result = new HashSet<Rail>();
        var pending = new Stack<Rail>(failing.Where(check => check.Rule == "RAIL0007" && check.Rail is not null && !check.Places.Any(place => place.Datum == nameof(Element.Designator))).Select(check => check.Rail!));
        while (pending.Count > 0)
        {
            var rail = pending.Pop();
            if (!network.Contains(rail) || !result.Add(rail))
            {
                continue;
            }

            foreach (var below in network.Children(rail).Concat(network.ConvertersOn(rail).SelectMany(network.FedBy)))
            {
                pending.Push(below);
            }
        }

        return result;
    }
}
