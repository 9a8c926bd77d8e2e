using System.Collections.Immutable;

namespace Programs.Collections.ImmutableArrays;

/// <summary>Every change makes a new array.</summary>
public static class P
{
    private static readonly ImmutableArray<int> Base = [1, 2, 3];
    public static readonly ImmutableArray<int> Added = Base.Add(4);
    public static readonly ImmutableArray<int> Inserted = Base.Insert(0, 9);
    public static readonly ImmutableArray<int> Removed = Base.Remove(2);
    public static readonly ImmutableArray<int> Set = Base.SetItem(1, 20);
    public static readonly ImmutableArray<int> Ranged = Base.AddRange(7, 8).RemoveAt(0);
    public static readonly ImmutableArray<int> Created = ImmutableArray.Create(5, 6);
    public static readonly ImmutableArray<int> Converted = Enumerable.Range(1, 3).ToImmutableArray();
    public static readonly ImmutableArray<int> Built = Build();
    public static readonly bool Default = default(ImmutableArray<int>).IsDefault && Base.Length == 3;
    public static readonly bool Empty = ImmutableArray<string>.Empty.IsEmpty;
    public static readonly int Index = Base.IndexOf(3);
    public static readonly bool Reference = Base == Base && Base != Base.Add(0);
    public static readonly ImmutableArray<int> Sorted = Base.Reverse().ToImmutableArray().Sort();

    private static ImmutableArray<int> Build()
    {
        var builder = ImmutableArray.CreateBuilder<int>(4);
        builder.Add(1);
        builder.AddRange(5, 3);
        builder[0] = 9;
        return builder.ToImmutable();
    }
}
