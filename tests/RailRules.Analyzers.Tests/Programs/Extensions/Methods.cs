namespace Programs.Extensions.Methods;

/// <summary>Classic extension methods, on types, interfaces, generics and null.</summary>
public static class P
{
    public static readonly int Words = "one two three".WordCount();
    public static readonly double Middle = new[] { 3, 1, 2 }.Median();
    public static readonly string Null = ((string?)null).OrDash() + "x".OrDash();
    public static readonly bool Between = 5.IsBetween(1, 9) && !2.5.IsBetween(3.0, 4.0);
    public static readonly int Static = Texts.WordCount("a b");
    public static readonly int? Conditional = ((string?)null)?.WordCount();
    public static readonly string Chained = "bb a".Split(' ').Sorted().Joined("+");
}

public static class Texts
{
    public static int WordCount(this string text) => text.Split(' ').Length;

    public static string OrDash(this string? text) => text ?? "-";

    public static double Median(this IEnumerable<int> values)
    {
        var sorted = values.Order().ToArray();
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2.0;
    }

    public static bool IsBetween<T>(this T value, T low, T high)
        where T : IComparable<T> => value.CompareTo(low) >= 0 && value.CompareTo(high) <= 0;

    public static IEnumerable<T> Sorted<T>(this IEnumerable<T> items) => items.OrderBy(item => item!.ToString()!.Length);

    public static string Joined(this IEnumerable<string> items, string separator) => string.Join(separator, items);
}
