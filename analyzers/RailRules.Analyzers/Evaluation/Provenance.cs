using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Side tables: where objects and their data were written, which data are unknown, and who made what. Keyed by reference.</summary>
internal sealed class Provenance
{
    private readonly Dictionary<object, ObjectRecord> objects = new(ReferenceComparer.Instance);
    private readonly Dictionary<object, Origin?[]> elements = new(ReferenceComparer.Instance);
    private readonly Dictionary<object, MemberRun?> makers = new(ReferenceComparer.Instance);

    /// <summary>Whether any datum is unknown at all; most evaluations have none, and checks are skipped then.</summary>
    public bool AnyUnknown { get; private set; }

    public ObjectRecord? Find(object owner) => objects.TryGetValue(owner, out var record) ? record : null;

    /// <summary>Enters a new object; an object already known keeps its record.</summary>
    public ObjectRecord Enter(object made, Origin created)
    {
        if (!objects.TryGetValue(made, out var record))
        {
            objects[made] = record = new ObjectRecord(created);
        }

        return record;
    }

    /// <summary>Enters a copy: it has its original's data.</summary>
    public ObjectRecord EnterCopy(object copy, object original, Origin created)
    {
        var record = new ObjectRecord(created);
        if (Find(original) is { } source)
        {
            record.TakeOver(source);
        }

        objects[copy] = record;
        return record;
    }

    public void SetUnknown(ObjectRecord record, string datum)
    {
        record.SetUnknown(datum);
        AnyUnknown = true;
    }

    public void EnterElements(object array, Origin?[] origins) => elements[array] = origins;

    public Origin? Element(object array, int index) =>
        elements.TryGetValue(array, out var origins) && index >= 0 && index < origins.Length ? origins[index] : null;

    /// <summary>Notes which evaluation made a mutable object: only that one may change it, and only while it runs.</summary>
    public void SetMaker(object made, MemberRun maker)
    {
        if (!makers.ContainsKey(made))
        {
            makers[made] = maker;
        }
    }

    /// <summary>From now on nobody may change the object.</summary>
    public void Freeze(object made) => makers[made] = null;

    public bool IsMadeBy(object made, MemberRun maker) => makers.TryGetValue(made, out var found) && ReferenceEquals(found, maker);

    public bool IsMade(object made) => makers.ContainsKey(made);
}

/// <summary>What is known about one model object besides itself.</summary>
internal sealed class ObjectRecord(Origin created)
{
    private readonly List<KeyValuePair<string, Origin>> data = [];
    private HashSet<string>? unknown;

    public Origin Created { get; } = created;

    public ISymbol Member => Created.Member;

    public bool HasUnknown => unknown is { Count: > 0 };

    public Origin? this[string datum]
    {
        get
        {
            for (var i = data.Count - 1; i >= 0; i--)
            {
                if (data[i].Key == datum)
                {
                    return data[i].Value;
                }
            }

            return null;
        }
    }

    public void Set(string datum, Origin origin)
    {
        data.Add(new KeyValuePair<string, Origin>(datum, origin));
        unknown?.Remove(datum);
    }

    public void SetUnknown(string datum) => (unknown ??= new HashSet<string>(StringComparer.Ordinal)).Add(datum);

    public bool IsUnknown(string datum) => unknown?.Contains(datum) ?? false;

    public void TakeOver(ObjectRecord source)
    {
        data.AddRange(source.data);
        if (source.HasUnknown)
        {
            unknown = new HashSet<string>(source.unknown!, StringComparer.Ordinal);
        }
    }
}

/// <summary>Compares by reference.</summary>
internal sealed class ReferenceComparer : IEqualityComparer<object>
{
    public static readonly ReferenceComparer Instance = new();

    public new bool Equals(object? x, object? y) => ReferenceEquals(x, y);

    public int GetHashCode(object obj) => RuntimeHelpers.GetHashCode(obj);
}
