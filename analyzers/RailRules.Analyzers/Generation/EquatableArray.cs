using System.Collections;
using System.Collections.Immutable;

namespace RailRules.Analyzers.Generation;

/// <summary>An array that equals another one with equal items, so that the compiler's generator driver can tell that nothing changed.</summary>
internal readonly struct EquatableArray<T>(ImmutableArray<T> items) : IEquatable<EquatableArray<T>>, IEnumerable<T>
    where T : IEquatable<T>
{
    private readonly ImmutableArray<T> items = items;

    public int Count => items.IsDefault ? 0 : items.Length;

    public T this[int index] => items[index];

    public bool Equals(EquatableArray<T> other)
    {
        if (Count != other.Count)
        {
            return false;
        }

        for (var i = 0; i < Count; i++)
        {
            if (!items[i].Equals(other.items[i]))
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => obj is EquatableArray<T> other && Equals(other);

    public override int GetHashCode()
    {
        var hash = Count;
        for (var i = 0; i < Count; i++)
        {
            hash = unchecked((hash * 31) + items[i].GetHashCode());
        }

        return hash;
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)(items.IsDefault ? [] : items)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
