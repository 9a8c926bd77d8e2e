using System.Globalization;

namespace RailRules.Rules;

/// <summary>
/// RAIL0003: a datum that contradicts itself or another. Structural, a finding a datum; a datum that is null is not looked at.
/// </summary>
/// <remarks>
/// The tables say what each record's data may be; <see cref="Validate"/> reads them for one object, <see cref="Apply"/> for all that a board reaches.
/// A part that was copied into several places (<see cref="Placement.As{T}(T, string)"/>) gives one finding: records that are equal but for their designator are one part.
/// </remarks>
public sealed partial class ContradictoryDatum : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0003",
        "A datum that contradicts itself or another",
        RuleSeverity.Error,
        "A datum is outside what it can be, or two data cannot both be true, so that nothing worked out from them means anything.")
    {
        Basis = "definitions of the quantities: IEC 60269-1 (melting and clearing I²t, time-current zones), IEC 62319-1 (hold and trip current), IEC 61643-321 (stand-off, breakdown and clamping voltage) (from memory)",
    };

    /// <summary>The findings of one object of the model and of the objects in it: part, load, source, policy, rail. Sources that feed it are not followed.</summary>
    /// <param name="part">Any object; one that is not of the model has no findings.</param>
    public static IEnumerable<Check> Validate(object part)
    {
        var walk = new Walk(followSources: false);
        walk.Add(part, null);
        return walk.Run();
    }

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        var walk = new Walk(followSources: true);
        foreach (var rail in network.Rails)
        {
            walk.Add(rail, rail);
        }

        var checks = walk.Run();
        checks.AddRange(new Loops().Check(network.Rails));
        return checks;
    }

    /// <summary>A finding: a datum, what it says, and what it contradicts.</summary>
    private static Check Finding(string label, string datum, string value, string other, Rail? rail, IEnumerable<DatumPlace> places) =>
        new("RAIL0003", $"'{label}': {datum}", Verdict.Fails, null, $"'{label}': {datum} {value} contradicts {other}")
        {
            Rail = rail,
            Basis = "structural",
            Places = [.. places],
        };

    /// <summary>Two values for people: three digits each, more where three would show them as one.</summary>
    private static (string Left, string Right) Texts(double left, double right, string unit)
    {
        var (a, b) = (Figures.Text(left, unit), Figures.Text(right, unit));
        return a != b || left.Equals(right) ? (a, b) : (Long(left, unit), Long(right, unit));
    }

    private static string Long(double value, string unit) => (value.ToString("G9", CultureInfo.InvariantCulture) + " " + unit).TrimEnd();

    private static bool IsFinite(double value) => !double.IsNaN(value) && !double.IsInfinity(value);

    /// <summary>Whether <paramref name="left"/> is below <paramref name="right"/> by more than rounding.</summary>
    private static bool IsBelow(double left, double right) => left < right - (1e-9 * Math.Max(Math.Abs(left), Math.Abs(right)));

    private static string? LabelOf(object part, Rail? rail)
    {
        var (name, number, designator, member) = part switch
        {
            Source source => (source.Name, null, null, source.Member),
            Element element => (element.Name, element.PartNumber, element.Designator, element.Member),
            TransientSuppressor clamp => (clamp.Name, clamp.PartNumber, clamp.Designator, clamp.Member),
            Capacitor capacitor => (capacitor.Name, capacitor.PartNumber, capacitor.Designator, capacitor.Member),
            Load load => (load.Name, null, null, null),
            DesignPolicy policy => (policy.Name, null, null, null),
            _ => ((string?)null, (string?)null, (string?)null, (string?)null),
        };

        // A part made within its rail carries the rail's member, which says nothing.
        var declared = member == ".ctor" || (rail is not null && member == rail.Member) ? null : member;
        return new[] { number, name, declared, designator }.FirstOrDefault(text => !string.IsNullOrWhiteSpace(text));
    }

    /// <summary>An object to look at: whose name its findings carry, how its data are reached from there, and where it stands.</summary>
    private sealed record Item(object Object, object Root, string Label, string Prefix, Item? Parent, string? Datum, int? Index, Rail? Rail)
    {
        /// <summary>The places of a datum, the datum itself first, then the collection or property in which its object stands.</summary>
        public IEnumerable<DatumPlace> Places(string datum, int? index = null)
        {
            yield return new DatumPlace(Object, datum, index);
            for (var item = this; item.Parent is { } parent && item.Datum is { } held; item = parent)
            {
                yield return new DatumPlace(parent.Object, held, item.Index);
            }
        }
    }

    /// <summary>Looks at objects once each, in the order in which they are met; depth costs no stack.</summary>
    private sealed class Walk(bool followSources)
    {
        private readonly List<Item> roots = [];
        private readonly Stack<Item> work = new();
        private readonly HashSet<object> seen = new(Network.ByReference.Instance);
        private readonly List<(Item Item, bool IsAlone, Check Check)> found = [];
        private readonly HashSet<DatumPlace> alone = [];

        public bool FollowSources { get; } = followSources;

        public void Add(object part, Rail? rail) => roots.Add(new Item(part, part, LabelOf(part, rail) ?? part.GetType().Name, "", null, null, null, rail ?? part as Rail));

        public List<Check> Run()
        {
            foreach (var root in roots)
            {
                work.Push(root);
                while (work.Count > 0)
                {
                    var item = work.Pop();
                    if (seen.Add(item.Object) && Tables.TryGetValue(item.Object.GetType(), out var table))
                    {
                        var report = new Report(item, this);
                        table.Look(item.Object, report);
                        report.PushHeld(work);
                    }
                }
            }

            // A datum that is bad by itself is named once, not again for each that it is compared with.
            return [.. found.Where(entry => entry.IsAlone || !entry.Check.Places.Any(alone.Contains)).Select(entry => entry.Check)];
        }

        /// <param name="item">The object.</param>
        /// <param name="isAlone">Whether the datum is bad by itself, whatever the others are.</param>
        /// <param name="datum">The datum.</param>
        /// <param name="value">What it says.</param>
        /// <param name="other">What it contradicts.</param>
        /// <param name="places">Where to look, the datum first.</param>
        public void Found(Item item, bool isAlone, string datum, string value, string other, IEnumerable<DatumPlace> places)
        {
            var check = Finding(item.Label, item.Prefix + datum, value, other, item.Rail, places);
            if (isAlone)
            {
                alone.Add(check.Places[0]);
            }

            for (var index = 0; index < found.Count; index++)
            {
                var earlier = found[index];
                if (earlier.Item.Prefix == item.Prefix && earlier.Check.Message == check.Message && AreCopies(earlier.Item.Root, item.Root))
                {
                    found[index] = (earlier.Item, earlier.IsAlone, earlier.Check with { Places = [.. earlier.Check.Places, .. check.Places] });
                    return;
                }
            }

            found.Add((item, isAlone, check));
        }

        private static bool AreCopies(object left, object right) => (left, right) switch
        {
            (Element a, Element b) => (a with { Designator = null }).Equals(b with { Designator = null }),
            (Capacitor a, Capacitor b) => (a with { Designator = null }).Equals(b with { Designator = null }),
            (TransientSuppressor a, TransientSuppressor b) => (a with { Designator = null }).Equals(b with { Designator = null }),
            _ => false,
        };
    }

    /// <summary>A value that takes part in a comparison.</summary>
    private readonly record struct Named(string Text, double Value, DatumPlace Place);
}
