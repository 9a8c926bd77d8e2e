using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace RailRules;

/// <summary>
/// A board's rails with what is derived from them once and used by many rules: order, policies, surroundings, voltages, operating point.
/// </summary>
public sealed partial class Network
{
    private readonly Func<object, string, bool>? isUnknown;
    private readonly Dictionary<Source, int> indexOf = new(ByReference.Instance);
    private readonly ImmutableArray<Supplying>[] suppliers;
    private readonly List<int>[] children;
    private readonly List<Converter>[] convertersOn;
    private readonly Dictionary<Source, List<int>> fedBy = new(ByReference.Instance);
    private readonly HashSet<int> partialStates = [];
    private readonly int[] downstream;
    private readonly bool[] cyclic;

    /// <summary>Builds the network of a board.</summary>
    /// <param name="rails">The board's rails, in declaration order; those that feed them are found.</param>
    /// <param name="isUnknown">Whether a datum could not be worked out (owner, property): it is then null or empty in the model, and must not count as absent.</param>
    public Network(IEnumerable<Rail> rails, Func<object, string, bool>? isUnknown = null)
    {
        this.isUnknown = isUnknown;
        var found = new List<Rail>();
        var sources = new List<Source>();
        var seen = new HashSet<Source>(ByReference.Instance);
        foreach (var rail in rails)
        {
            if (rail is not null && seen.Add(rail))
            {
                found.Add(rail);
            }
        }

        for (var i = 0; i < found.Count; i++)
        {
            foreach (var supplying in SuppliersOf(found[i]))
            {
                var source = supplying.From;
                while (source is not null && seen.Add(source))
                {
                    if (source is Rail rail)
                    {
                        found.Add(rail);
                    }
                    else
                    {
                        sources.Add(source);
                    }

                    source = (source as Converter)?.Input;
                }
            }
        }

        Rails = JudgedRails = [.. found];
        Sources = [.. sources];
        suppliers = new ImmutableArray<Supplying>[Rails.Length];
        children = new List<int>[Rails.Length];
        convertersOn = new List<Converter>[Rails.Length];
        cyclic = new bool[Rails.Length];
        for (var i = 0; i < Rails.Length; i++)
        {
            indexOf[Rails[i]] = i;
            suppliers[i] = SuppliersOf(Rails[i]);
            children[i] = [];
            convertersOn[i] = [];
        }

        foreach (var source in Sources)
        {
            if (source is Converter { Input: { } input })
            {
                convertersOn[indexOf[input]].Add((Converter)source);
            }
        }

        downstream = Order();
    }

    /// <summary>The rails, those given first, then those found by following what feeds them; each once.</summary>
    public ImmutableArray<Rail> Rails { get; }

    /// <summary>The rails that rules judge: all of them, unless one part is looked at in place of another.</summary>
    internal ImmutableArray<Rail> JudgedRails { get; set; }

    /// <summary>The supplies, batteries and converters that feed the rails; each once.</summary>
    public ImmutableArray<Source> Sources { get; }

    /// <summary>The board's waivers; none until the engine has them.</summary>
    internal Waivers? Waivers { get; set; }

    /// <summary>Whether a datum was written but could not be worked out.</summary>
    public bool IsUnknown(object owner, string datum) => isUnknown?.Invoke(owner, datum) ?? false;

    /// <summary>Whether the rail feeds itself, or is fed by one that does; it then has no voltage and no current.</summary>
    internal bool IsCyclic(Rail rail) => cyclic[indexOf[rail]];

    /// <summary>The rails fed by this one without a converter between, in order.</summary>
    internal IEnumerable<Rail> Children(Rail rail) => children[indexOf[rail]].Select(index => Rails[index]);

    /// <summary>The converters that this rail feeds, in order.</summary>
    internal IReadOnlyList<Converter> ConvertersOn(Rail rail) => convertersOn[indexOf[rail]];

    /// <summary>The rails that share a source with this one, directly or over others, itself included, in order: what happens on one may be felt on all.</summary>
    internal ImmutableArray<Rail> ConnectedWith(Rail rail)
    {
        var seen = new HashSet<Source>(ByReference.Instance);
        var open = new Stack<Source>([rail]);
        while (open.Count > 0)
        {
            var source = open.Pop();
            if (!seen.Add(source))
            {
                continue;
            }

            var touching = FedBy(source).Concat<Source?>(source is Rail one ? [.. ConvertersOn(one), .. Suppliers(one).Select(supplying => supplying.From)] : [(source as Converter)?.Input]);
            foreach (var other in touching)
            {
                if (other is not null)
                {
                    open.Push(other);
                }
            }
        }

        return [.. Rails.Where(seen.Contains)];
    }

    /// <summary>What feeds a rail: its source, or each of its feeds.</summary>
    internal ImmutableArray<Supplying> Suppliers(Rail rail) => suppliers[indexOf[rail]];

    /// <summary>The rails that a source feeds directly, in order; each once.</summary>
    internal IEnumerable<Rail> FedBy(Source source) => FedByIndex(source).Select(index => Rails[index]);

    private IReadOnlyList<int> FedByIndex(Source source) => fedBy.TryGetValue(source, out var rails) ? rails : [];

    /// <summary>Whether a datum that decides a structure (what feeds, what is in the path, what hangs on the rail) is missing though it was written.</summary>
    internal MissingDatum? Unworkable(object owner, string label, params string[] data)
    {
        foreach (var datum in data)
        {
            if (IsUnknown(owner, datum))
            {
                return new MissingDatum(new DatumPlace(owner, datum), label);
            }
        }

        return null;
    }

    internal static ImmutableArray<T> Items<T>(ImmutableArray<T> items) => items.IsDefault ? [] : items;

    private static ImmutableArray<Supplying> SuppliersOf(Rail rail)
    {
        var feeds = Items(rail.Feeds);
        var result = ImmutableArray.CreateBuilder<Supplying>(feeds.Length + 1);
        if (rail.From is not null || feeds.Length == 0)
        {
            result.Add(new Supplying(rail.From, null, new DatumPlace(rail, nameof(Rail.From))));
        }

        for (var i = 0; i < feeds.Length; i++)
        {
            if (feeds[i] is { } feed)
            {
                result.Add(new Supplying(feed.From, feed, new DatumPlace(rail, nameof(Rail.Feeds), i)));
            }
        }

        return result.ToImmutable();
    }

    /// <summary>Rails by index, each after all that feed it; what is left over is cyclic.</summary>
    private int[] Order()
    {
        var waits = new int[Rails.Length];
        var opens = new List<int>[Rails.Length];
        for (var i = 0; i < Rails.Length; i++)
        {
            opens[i] = [];
        }

        for (var i = 0; i < Rails.Length; i++)
        {
            foreach (var supplying in suppliers[i])
            {
                if (supplying.From is { } source)
                {
                    if (!fedBy.TryGetValue(source, out var fed))
                    {
                        fedBy.Add(source, fed = []);
                    }

                    if (fed.Count == 0 || fed[fed.Count - 1] != i)
                    {
                        fed.Add(i);
                    }
                }

                var above = supplying.From as Rail ?? (supplying.From as Converter)?.Input;
                if (above is not null)
                {
                    waits[i]++;
                    opens[indexOf[above]].Add(i);
                }

                if (supplying.From is Rail parent && children[indexOf[parent]] is var below && (below.Count == 0 || below[below.Count - 1] != i))
                {
                    below.Add(i);
                }
            }
        }

        var order = new List<int>(Rails.Length);
        for (var i = 0; i < Rails.Length; i++)
        {
            if (waits[i] == 0)
            {
                order.Add(i);
            }
        }

        for (var k = 0; k < order.Count; k++)
        {
            foreach (var i in opens[order[k]])
            {
                if (--waits[i] == 0)
                {
                    order.Add(i);
                }
            }
        }

        for (var i = 0; i < Rails.Length; i++)
        {
            cyclic[i] = waits[i] > 0;
        }

        return [.. order];
    }

    /// <summary>One thing that feeds a rail.</summary>
    /// <param name="From">Supply, battery, converter or rail; null: nothing is stated.</param>
    /// <param name="Feed">The feed, where the rail has several; null: the rail's own From.</param>
    /// <param name="Place">Where it is written.</param>
    internal readonly record struct Supplying(Source? From, Feed? Feed, DatumPlace Place);

    internal sealed class ByReference : IEqualityComparer<object>
    {
        internal static readonly ByReference Instance = new();

        bool IEqualityComparer<object>.Equals(object? x, object? y) => ReferenceEquals(x, y);

        int IEqualityComparer<object>.GetHashCode(object obj) => RuntimeHelpers.GetHashCode(obj);
    }
}
