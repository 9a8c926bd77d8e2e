using System.Collections.Immutable;

namespace Programs.Generics.Methods;

/// <summary>Generic methods, inferred and stated.</summary>
public static class P
{
    public static readonly int Max = Largest(3, 9, 4);
    public static readonly char MaxText = Largest('b', 'a');
    public static readonly (string, int) Swapped = Swap(1, "x");
    public static readonly int Stated = Convert<double, int>(2.9, d => (int)d);
    public static readonly ImmutableArray<string> Mapped = Map([1, 2], n => "n" + n);
    public static readonly bool Same = AreEqual(1.5, 1.5) && !AreEqual("a", "b");
    public static readonly int Count = CountOf<string>([1, "a", "b", 2.5]);

    private static T Largest<T>(params T[] values)
        where T : IComparable<T>
    {
        var largest = values[0];
        foreach (var value in values)
        {
            if (value.CompareTo(largest) > 0)
                largest = value;
        }

        return largest;
    }

    private static (TB, TA) Swap<TA, TB>(TA a, TB b) => (b, a);

    private static TOut Convert<TIn, TOut>(TIn value, Func<TIn, TOut> how) => how(value);

    private static ImmutableArray<TOut> Map<TIn, TOut>(IEnumerable<TIn> values, Func<TIn, TOut> how)
    {
        var builder = ImmutableArray.CreateBuilder<TOut>();
        foreach (var value in values)
            builder.Add(how(value));
        return builder.ToImmutable();
    }

    private static bool AreEqual<T>(T a, T b) => EqualityComparer<T>.Default.Equals(a, b);

    private static int CountOf<T>(object[] items) => items.Count(item => item is T);
}
