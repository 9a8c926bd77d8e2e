using System.Collections.Immutable;

namespace RailRules.Review;

/// <content>Rails and what their devices protect.</content>
public sealed partial class BoardReview
{
    private void ReadRails()
    {
        var thin = Checks.Where(check => check.Check.Rail is not null).ToLookup(check => check.Check.Rail!);
        var notes = ImmutableArray.CreateBuilder<string>();
        var result = ImmutableArray.CreateBuilder<RailSummary>(Network.Rails.Length);
        foreach (var rail in Network.Rails)
        {
            var voltages = Network.VoltagesOf(rail);
            var flow = Network.CurrentOf(rail);
            var checks = thin[rail].ToImmutableArray();
            result.Add(new RailSummary(
                rail,
                Network.Label(rail),
                [.. Network.Suppliers(rail).Select(supplying => supplying.From is { } from ? Network.Label(from) : "nothing stated")],
                voltages.Low.IsKnown ? new Figure(voltages.Low.Value, "V") : null,
                voltages.High.IsKnown ? new Figure(voltages.High.Value, "V") : null,
                voltages.Peak.IsKnown ? new Figure(voltages.Peak.Value, "V") : null,
                flow.Reason == Network.FlowReason.Solved && !double.IsInfinity(flow.High) ? new Figure(flow.High, "A") : null,
                flow.IsExact,
                checks.Length == 0 ? null : checks.Min(check => check.Outcome),
                checks.Where(check => check.Check.Margin is not null).Select(check => check.Check.Margin!.Value).DefaultIfEmpty(double.PositiveInfinity).Min(),
                Written(new DatumPlace(rail))));
            NoteHazards(rail, voltages, notes);
        }

        Rails = result.ToImmutable();
        Notes = Condense(notes);
    }

    /// <summary>Above these a product safety standard asks more questions. IEC 62368-1: class ES1 ends at 60 V DC (from memory); 1 J is this project's own line.</summary>
    private const double HighVoltage = 60, HighEnergy = 1;

    private void NoteHazards(Rail rail, Network.RailVoltages voltages, ImmutableArray<string>.Builder notes)
    {
        var highest = Math.Max(voltages.High.Value, voltages.Peak.Value);
        if (highest > HighVoltage)
        {
            notes.Add($"'{Network.Label(rail)}' reaches {Figures.Text(highest, "V")}: above 60 V DC, where product safety standards ask for protection against electric shock");
        }

        var farads = Network.Items(rail.Capacitors).Sum(capacitor => capacitor?.Capacitance?.Max.Farads ?? 0)
            + Network.Items(rail.Loads).Sum(load => load?.InputCapacitance?.Max.Farads ?? 0)
            + Network.Suppliers(rail).Sum(supplying => (supplying.From as Supply)?.OutputCapacitance?.Max.Farads ?? (supplying.From as Converter)?.OutputCapacitance?.Max.Farads ?? 0);
        var energy = 0.5 * farads * voltages.High.Value * voltages.High.Value;
        if (energy > HighEnergy)
        {
            notes.Add($"capacitors on '{Network.Label(rail)}' hold up to {Figures.Text(energy, "J")} at {Figures.Text(voltages.High.Value, "V")}: above 1 J, and still there when the supply is switched off");
        }
    }

    private static ImmutableArray<string> Condense(ImmutableArray<string>.Builder notes)
    {
        // Equal rails make equal notes but for their name.
        var result = ImmutableArray.CreateBuilder<string>();
        foreach (var group in notes.GroupBy(note => System.Text.RegularExpressions.Regex.Replace(note, "'.*?'(?=( reaches| hold))", "'…'")))
        {
            result.Add(group.Count() == 1 ? group.First() : group.First() + $" (so {Shown.Count(group.Count() - 1, "more rail")})");
        }

        return result.ToImmutable();
    }

    private void ReadProtections()
    {
        var result = new List<Protection>();
        foreach (var rail in Network.Rails)
        {
            foreach (var place in Network.Parts(rail))
            {
                if (IsDevice(place.Part) && place.Branches.IsEmpty)
                {
                    result.Add(ProtectionOf(place));
                }
            }
        }

        Protections = [.. result.GroupBy(one => one.Signature, StringComparer.Ordinal).Select(group => group.First() with { Places = [.. group.Select(one => one.Places[0])] })];
    }

    internal static bool IsDevice(Element? part) => part is Fuse or CircuitBreaker or ElectronicFuse or ResettableFuse
        || (part is ParallelGroup group && Network.Items(group.Branches).Any(branch => Network.Items(branch).Any(IsDevice)));

    private Protection ProtectionOf(Network.PartPlace place)
    {
        var rail = place.Rail;
        var label = Network.Label(rail);
        var path = place.InReturn ? [] : place.Feed is null ? Network.Items(rail.Path) : Network.Items(place.Feed.Path);
        var position = place.Place.Index ?? 0;
        var protects = new List<string>();
        if (place.InReturn)
        {
            protects.Add("stands in the return: only what shares that return");
        }
        else if (Stretch(rail, path, position + 1, protects))
        {
            if (place.Feed is null)
            {
                AtEnd(rail, protects, 0);
            }
            else if (Stretch(rail, Network.Items(rail.Path), 0, protects))
            {
                AtEnd(rail, protects, 0);
            }
        }

        var sources = place.Feed is { From: { } fed } ? SourcesOf(fed) : [.. Network.Suppliers(rail).Where(one => one.From is not null).SelectMany(one => SourcesOf(one.From!))];
        var feeds = Network.Items(rail.Feeds).Length;
        var direction = place.Feed is not null && feeds > 1
            ? "from its source to the rail; and back, when another feed drives current into it"
            : "from source to load";
        var upstream = UpstreamOf(rail, place.Feed, path, position);
        return new Protection(place.Label, Network.Kind(place.Part), [new ProtectedPlace(label, place.Part.Designator)], [.. sources.Distinct()], direction, [.. protects.Distinct()], upstream)
        {
            Signature = string.Join('\u0001', [place.Label, Network.Kind(place.Part), direction, upstream ?? "", .. sources, "|", .. protects.Select(one => one.Replace("'" + label + "'", "'…'", StringComparison.Ordinal))]),
        };
    }

    /// <summary>What follows on a path until the next device; whether the path ends before one.</summary>
    private static bool Stretch(Rail rail, ImmutableArray<Element> path, int from, List<string> protects)
    {
        for (var i = from; i < path.Length; i++)
        {
            if (path[i] is not { } part)
            {
                continue;
            }

            if (IsDevice(part))
            {
                return false;
            }

            protects.Add($"{Network.Kind(part)} '{Network.Label(part, rail, i)}'");
        }

        return true;
    }

    private void AtEnd(Rail rail, List<string> protects, int depth)
    {
        var loads = Network.Items(rail.Loads);
        for (var i = 0; i < loads.Length; i++)
        {
            if (loads[i] is { } load)
            {
                protects.Add($"load '{Network.Label(load, rail, i)}'");
            }
        }

        foreach (var converter in Network.ConvertersOn(rail))
        {
            protects.Add($"input of converter '{Network.Label(converter)}'");
        }

        if (depth > 200 || Network.IsCyclic(rail))
        {
            return;
        }

        foreach (var child in Network.Children(rail))
        {
            var path = Network.Items(child.Path);
            var name = Network.Label(child);
            if (path.Any(IsDevice))
            {
                protects.Add($"rail '{name}' up to its first device");
            }
            else
            {
                protects.Add($"rail '{name}'");
                AtEnd(child, protects, depth + 1);
            }
        }
    }

    private ImmutableArray<string> SourcesOf(Source source)
    {
        var result = ImmutableArray.CreateBuilder<string>();
        var seen = new HashSet<Source>(ReferenceEqualityComparer.Instance);
        var pending = new Queue<Source>([source]);
        while (pending.Count > 0)
        {
            var current = pending.Dequeue();
            if (!seen.Add(current))
            {
                continue;
            }

            if (current is Rail rail && Network.Contains(rail))
            {
                foreach (var supplying in Network.Suppliers(rail))
                {
                    if (supplying.From is { } from)
                    {
                        pending.Enqueue(from);
                    }
                }
            }
            else
            {
                result.Add(Network.Label(current));
            }
        }

        return result.ToImmutable();
    }

    /// <summary>The device before this one, on the same path or above; null where there is none or several.</summary>
    private string? UpstreamOf(Rail rail, Feed? feed, ImmutableArray<Element> path, int position)
    {
        var current = rail;
        var seen = new HashSet<Rail>(ReferenceEqualityComparer.Instance);
        for (var i = position - 1; i >= 0; i--)
        {
            if (i < path.Length && path[i] is { } part && IsDevice(part))
            {
                return Named(part, current, i);
            }
        }

        var above = feed is null ? Network.Suppliers(current) is [{ Feed: null } only] ? only.From : null : feed.From;
        while (above is Rail next && seen.Add(next))
        {
            var elements = Network.Items(next.Path);
            for (var i = elements.Length - 1; i >= 0; i--)
            {
                if (elements[i] is { } part && IsDevice(part))
                {
                    return Named(part, next, i);
                }
            }

            above = Network.Suppliers(next) is [{ Feed: null } one] ? one.From : null;
        }

        return null;
    }

    private static string Named(Element part, Rail rail, int position) =>
        part.Designator is { Length: > 0 } designator ? $"{designator} '{Network.Label(part, rail, position)}' on '{Network.Label(rail)}'" : $"'{Network.Label(part, rail, position)}' on '{Network.Label(rail)}'";
}

/// <summary>A rail in one line.</summary>
/// <param name="Rail">The rail.</param>
/// <param name="Name">Its name.</param>
/// <param name="From">What feeds it.</param>
/// <param name="Low">Lowest steady voltage.</param>
/// <param name="High">Highest steady voltage.</param>
/// <param name="Peak">Highest voltage, transients included.</param>
/// <param name="Current">Largest steady current; null: not known or without bound.</param>
/// <param name="IsExact">Whether the current is exact, not a bound.</param>
/// <param name="Outcome">The worst outcome of its checks; null: none was made.</param>
/// <param name="Margin">Its thinnest margin; infinite: none.</param>
/// <param name="At">Where it is written.</param>
public sealed record RailSummary(
    Rail Rail, string Name, ImmutableArray<string> From, Figure? Low, Figure? High, Figure? Peak, Figure? Current, bool IsExact, Outcome? Outcome, double Margin, SourcePlace? At);

/// <summary>What a device protects.</summary>
/// <param name="Label">The device.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Places">Where it stands.</param>
/// <param name="Sources">From which sources.</param>
/// <param name="Direction">In which direction.</param>
/// <param name="Protects">What.</param>
/// <param name="Upstream">The device before it.</param>
public sealed record Protection(string Label, string Kind, ImmutableArray<ProtectedPlace> Places, ImmutableArray<string> Sources, string Direction, ImmutableArray<string> Protects, string? Upstream)
{
    internal string Signature { get; init; } = "";
}

/// <summary>Where a device stands.</summary>
/// <param name="Rail">The rail.</param>
/// <param name="Designator">The designator, where given.</param>
public sealed record ProtectedPlace(string Rail, string? Designator)
{
    /// <inheritdoc/>
    public override string ToString() => Designator is { Length: > 0 } ? $"{Designator} on '{Rail}'" : $"'{Rail}'";
}
