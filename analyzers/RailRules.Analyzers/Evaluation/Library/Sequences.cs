using System.Collections;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Collections.ObjectModel;
using System.Runtime.InteropServices;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Makes typed collections of untyped values; one instance for each element type.</summary>
internal abstract class Sequences
{
    private static readonly ConcurrentDictionary<Type, Sequences> All = new();

    public static Sequences Of(Type element) =>
        All.GetOrAdd(element, static type => (Sequences)Activator.CreateInstance(typeof(Sequences<>).MakeGenericType(type))!);

    public abstract Array Array(IReadOnlyList<object?> values);

    public abstract object ImmutableArray(Array array);

    public abstract Array? Underlying(object immutableArray);

    public abstract object List(IReadOnlyList<object?> values);

    public abstract object ReadOnly(Array array);

    public abstract object ImmutableList(IReadOnlyList<object?> values);

    public abstract object SortedSet(IReadOnlyList<object?> values);

    public abstract object HashSet(IReadOnlyList<object?> values);

    /// <summary>The sequence with a charge for each element that it yields.</summary>
    public abstract object Metered(object sequence, Action charge);

    /// <summary>A typed lazy sequence over an untyped one.</summary>
    public abstract object Lazy(IEnumerable<object?> values);
}

/// <summary>A sequence whose elements are worked out only when it is gone through.</summary>
internal interface ILazySequence
{
    /// <summary>Whether its elements may be rails or lead to some.</summary>
    bool HoldsObjects { get; }

    /// <summary>Goes through it: its elements as an array.</summary>
    object Walk();
}

/// <inheritdoc/>
internal sealed class Sequences<T> : Sequences
{
    public override Array Array(IReadOnlyList<object?> values)
    {
        var array = new T[values.Count];
        for (var i = 0; i < array.Length; i++)
        {
            array[i] = (T)values[i]!;
        }

        return array;
    }

    public override object ImmutableArray(Array array) => ImmutableCollectionsMarshal.AsImmutableArray((T[])array);

    public override Array? Underlying(object immutableArray) => ImmutableCollectionsMarshal.AsArray((ImmutableArray<T>)immutableArray);

    public override object List(IReadOnlyList<object?> values)
    {
        var list = new List<T>(values.Count);
        foreach (var value in values)
        {
            list.Add((T)value!);
        }

        return list;
    }

    public override object ReadOnly(Array array) => new ReadOnlyCollection<T>((T[])array);

    public override object ImmutableList(IReadOnlyList<object?> values) => System.Collections.Immutable.ImmutableList.CreateRange((T[])Array(values));

    public override object SortedSet(IReadOnlyList<object?> values) => new SortedSet<T>((T[])Array(values));

    public override object HashSet(IReadOnlyList<object?> values)
    {
        var set = new HashSet<T>();
        foreach (var value in values)
        {
            set.Add((T)value!);
        }

        return set;
    }

    public override object Metered(object sequence, Action charge) => new Meter(() => ((IEnumerable<T>)sequence).GetEnumerator(), charge);

    public override object Lazy(IEnumerable<object?> values) => new Meter(() => Cast(values), null);

    private static IEnumerator<T> Cast(IEnumerable<object?> values)
    {
        foreach (var value in values)
        {
            yield return (T)value!;
        }
    }

    private sealed class Meter(Func<IEnumerator<T>> open, Action? charge) : IEnumerable<T>, ILazySequence
    {
        public bool HoldsObjects => typeof(T) == typeof(UserObject) || typeof(T).Assembly == typeof(Rail).Assembly;

        public object Walk() => this.ToArray();

        public IEnumerator<T> GetEnumerator() => charge is null ? open() : Count(open(), charge);

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

        private static IEnumerator<T> Count(IEnumerator<T> inner, Action charge)
        {
            using (inner)
            {
                while (inner.MoveNext())
                {
                    charge();
                    yield return inner.Current;
                }
            }
        }
    }
}
