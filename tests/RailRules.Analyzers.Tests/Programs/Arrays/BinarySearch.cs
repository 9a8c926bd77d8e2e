using System.Collections.Immutable;

namespace Programs.Arrays.BinarySearch;

/// <summary>A search in a sorted table.</summary>
public static class P
{
    private static readonly double[] Ratings = [1, 2, 4, 6, 10, 16, 20, 25, 32];
    public static readonly ImmutableArray<int> Found = [.. new[] { 1.0, 6, 7, 32, 40, 0.5 }.Select(Find)];
    public static readonly int Library = Array.BinarySearch(Ratings, 16.0);
    public static readonly int IndexOf = Array.IndexOf(Ratings, 10);
    public static readonly double FirstAbove = Array.Find(Ratings, r => r > 12);

    private static int Find(double value)
    {
        int low = 0, high = Ratings.Length - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            if (Ratings[middle] == value)
                return middle;
            if (Ratings[middle] < value)
                low = middle + 1;
            else
                high = middle - 1;
        }

        return ~low;
    }
}
