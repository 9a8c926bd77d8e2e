using System.Collections.Immutable;

namespace Programs.Patterns.Lists;

/// <summary>List patterns on arrays, lists, strings and immutable arrays.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Shapes = [.. new int[][] { [], [1], [1, 2], [1, 2, 3], [9, 8, 7, 1], [5, 5, 5, 5, 5] }.Select(Shape)];
    public static readonly bool Exact = new[] { 1, 2 } is [1, 2];
    public static readonly bool Text = "RAIL0101" is ['R', 'A', 'I', 'L', .. { Length: 4 }];
    public static readonly bool List = new List<int> { 3, 4 } is [.., > 3];
    public static readonly bool Immutable = ImmutableArray.Create("a", "b") is ["a", ..];
    public static readonly bool Nested = new int[][] { [1], [2, 3] } is [[_], [.., 3]];

    private static string Shape(int[] values) => values switch
    {
        [] => "empty",
        [var only] => "one " + only,
        [1, 2] => "one two",
        [var first, .., var last] when first > last => $"falling {first} {last}",
        [1, .. var middle, 3] => "middle " + middle.Length,
        [_, _, .. { Length: > 2 } rest] => "long " + string.Join(',', rest),
        [..] => "other",
    };
}
