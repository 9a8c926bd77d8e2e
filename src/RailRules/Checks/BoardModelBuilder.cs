using System.Collections;
using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using UnitsNet;

namespace RailRules;

/// <summary>
/// Puts a <see cref="BoardModel"/> together, member by member. Made for generated code: it looks into collections and into the model by itself, without reflection; into the user's own
/// types the generated code looks.
/// </summary>
/// <param name="name">The name of the board's class.</param>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class BoardModelBuilder(string name)
{
    private readonly Dictionary<object, string> names = new(Network.ByReference.Instance);
    private readonly HashSet<object> entered = new(Network.ByReference.Instance);
    private readonly List<Rail> rails = [];
    private readonly List<Source> sources = [];
    private readonly List<object> parts = [];
    private readonly List<(string Name, List<object> Objects)> members = [];
    private readonly List<Waiver> waivers = [];
    private readonly List<DesignRule> rules = [];
    private readonly List<string> notReached = [];

    /// <summary>Begins with the next static member.</summary>
    /// <param name="member">Its name, with those of nested classes before it.</param>
    public BoardModelBuilder Member(string member)
    {
        members.Add((member, []));
        entered.Clear();
        return this;
    }

    /// <summary>Adds what the member, or a part of it, holds.</summary>
    /// <param name="suffix">The way from the member to the value, e.g. <c>[2]</c>; empty: the member's value itself.</param>
    /// <param name="value">The value.</param>
    public void Add(string suffix, object? value)
    {
        switch (value)
        {
            case null or string or Delegate or Type or IQuantity or Enum or IConvertible or TimeSpan or DateTimeOffset or Guid or JouleIntegral:
                return;
            case var known when known.GetType().Assembly == typeof(Rail).Assembly:
                if (known is not ValueType)
                {
                    Hold(suffix, known);
                }

                return;
            case IDictionary map:
                foreach (DictionaryEntry entry in map)
                {
                    Add($"{suffix}.Keys", entry.Key);
                    Add(suffix + Key(entry.Key), entry.Value);
                }

                return;
            case IEnumerable items:
                if (!IsDefault(items) && (value is ValueType || entered.Add(value)))
                {
                    var index = 0;
                    foreach (var item in items)
                    {
                        Add(suffix + Index(index++), item);
                    }
                }

                return;
            default:
                NotReached(suffix);
                return;
        }
    }

    /// <summary>Adds the items of a collection whose type only the caller knows.</summary>
    /// <typeparam name="T">The type of the items.</typeparam>
    /// <param name="suffix">The way from the member to the collection.</param>
    /// <param name="items">The collection.</param>
    /// <param name="add">Adds one item.</param>
    public void Each<T>(string suffix, IEnumerable<T>? items, Action<string, T> add)
    {
        if (items is null or ImmutableArray<T> { IsDefault: true })
        {
            return;
        }

        var index = 0;
        foreach (var item in items)
        {
            add(suffix + Index(index++), item);
        }
    }

    /// <summary>Whether an object of the user's own is met for the first time in this member.</summary>
    /// <param name="value">The object.</param>
    public bool Enter(object value) => entered.Add(value);

    /// <summary>Says that something that may hold rails cannot be looked into.</summary>
    /// <param name="suffix">The way from the member to it.</param>
    public void NotReached(string suffix)
    {
        if (!notReached.Contains(Current + suffix))
        {
            notReached.Add(Current + suffix);
        }
    }

    /// <summary>Adds a waiver.</summary>
    /// <param name="waiver">The waiver.</param>
    public void Add(Waiver waiver) => waivers.Add(waiver);

    /// <summary>Adds a rule of the team's own.</summary>
    /// <param name="rule">The rule.</param>
    public void Add(DesignRule rule) => rules.Add(rule);

    /// <summary>The board.</summary>
    public BoardModel Build()
    {
        // Following a rail finds sources, following a converter a rail, until nothing is new.
        for (int rail = 0, source = 0; rail < rails.Count || source < sources.Count;)
        {
            if (rail < rails.Count)
            {
                Follow(rails[rail], names[rails[rail]]);
                rail++;
            }
            else
            {
                Note((sources[source] as Converter)?.Input, names[sources[source]] + "." + nameof(Converter.Input));
                source++;
            }
        }

        return new BoardModel(name, names)
        {
            Rails = [.. rails],
            Sources = [.. sources],
            Parts = [.. parts],
            Members = [.. members.Select(member => new BoardMember(member.Name, [.. member.Objects]))],
            Waivers = [.. waivers],
            Rules = [.. rules],
            NotReached = [.. notReached],
        };
    }

    /// <summary>How a key of a dictionary stands in a name.</summary>
    internal static string Key(object? key) => key switch
    {
        string text => $"[\"{text}\"]",
        IFormattable number and not IQuantity => $"[{number.ToString(null, CultureInfo.InvariantCulture)}]",
        Source source => $"[{source.Name}]",
        _ => "[]",
    };

    internal static string Index(int index) => $"[{index.ToString(CultureInfo.InvariantCulture)}]";

    private string Current => members.Count == 0 ? "" : members[members.Count - 1].Name;

    private void Hold(string suffix, object known)
    {
        if (members.Count > 0)
        {
            members[members.Count - 1].Objects.Add(known);
        }

        Note(known, Current + suffix);
    }

    /// <summary>A default ImmutableArray cannot be gone through. The interface of its type tells it without reflection.</summary>
    private static bool IsDefault(IEnumerable items)
    {
        try
        {
            return items is ICollection { Count: < 0 };
        }
        catch (InvalidOperationException)
        {
            return true;
        }
    }

    private void Note(object? known, string called)
    {
        if (known is null)
        {
            return;
        }

        if (names.ContainsKey(known))
        {
            return;
        }

        names.Add(known, called);
        switch (known)
        {
            case Rail rail:
                rails.Add(rail);
                break;
            case Source source:
                sources.Add(source);
                break;
            case Feed feed:
                Note(feed.From, called + ".From");
                break;
            case Element or TransientSuppressor or Capacitor:
                parts.Add(known);
                if (known is ParallelGroup group)
                {
                    Branches(group, called);
                }

                break;
        }
    }

    private void Branches(ParallelGroup group, string called)
    {
        var branches = Network.Items(group.Branches);
        for (var b = 0; b < branches.Length; b++)
        {
            All(branches[b], $"{called}.{nameof(ParallelGroup.Branches)}{Index(b)}");
        }
    }

    /// <summary>What a rail is made of and what feeds it.</summary>
    private void Follow(Rail rail, string called)
    {
        Note(rail.From, called + "." + nameof(Rail.From));
        var feeds = Network.Items(rail.Feeds);
        for (var i = 0; i < feeds.Length; i++)
        {
            if (feeds[i] is { } feed)
            {
                var at = $"{called}.{nameof(Rail.Feeds)}{Index(i)}";
                Note(feed.From, at + "." + nameof(Feed.From));
                All(feed.Path, at + "." + nameof(Feed.Path));
                All(feed.Return?.Elements ?? [], at + "." + nameof(Feed.Return));
            }
        }

        All(rail.Path, called + "." + nameof(Rail.Path));
        All(rail.Return?.Elements ?? [], called + "." + nameof(Rail.Return));
        All(rail.Clamps, called + "." + nameof(Rail.Clamps));
        All(rail.Capacitors, called + "." + nameof(Rail.Capacitors));
        All(rail.Loads, called + "." + nameof(Rail.Loads));
    }

    private void All<T>(ImmutableArray<T> items, string called)
    {
        var known = Network.Items(items);
        for (var i = 0; i < known.Length; i++)
        {
            Note(known[i], called + Index(i));
        }
    }
}
