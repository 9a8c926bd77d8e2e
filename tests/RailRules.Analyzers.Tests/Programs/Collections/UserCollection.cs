using System.Collections.Immutable;

namespace Programs.Collections.UserCollection;

/// <summary>A type of one's own with Add and an enumerator takes an initialiser.</summary>
public static class P
{
    private static readonly Series Values = new() { 3, { 1, 2 }, 9 };
    public static readonly int Count = Values.Count();
    public static readonly ImmutableArray<int> All = [.. Values];
    public static readonly int Sum = Add();
    public static readonly int Max = Values.Max();

    private static int Add()
    {
        var sum = 0;
        foreach (var value in Values)
            sum += value;
        return sum;
    }
}

public sealed class Series : IEnumerable<int>
{
    private readonly List<int> values = [];

    public void Add(int value) => values.Add(value);

    public void Add(int first, int second) => values.AddRange([first, second]);

    public IEnumerator<int> GetEnumerator() => values.GetEnumerator();

    System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
}
