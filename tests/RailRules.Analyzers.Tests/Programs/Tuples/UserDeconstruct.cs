namespace Programs.Tuples.UserDeconstruct;

/// <summary>A Deconstruct method, as a member and as an extension.</summary>
public static class P
{
    public static readonly string Member = Use(new Span(3, 8));
    public static readonly int Extension = Split("left=right");
    public static readonly string InPattern = new Span(1, 9) is (1, var end) ? "ends " + end : "no";
    public static readonly int Inner = Nested(new Span(2, 5), 7);

    private static string Use(Span span)
    {
        var (start, end) = span;
        var (from, _, length) = span;
        return $"{start}-{end} {from}+{length}";
    }

    private static int Split(string text)
    {
        var (left, right) = text;
        return left.Length * 10 + right.Length;
    }

    private static int Nested(Span span, int more)
    {
        var ((a, b), c) = (span, more);
        return a * 100 + b * 10 + c;
    }
}

public sealed class Span(int start, int end)
{
    public void Deconstruct(out int first, out int last) => (first, last) = (start, end);

    public void Deconstruct(out int first, out int last, out int length)
    {
        first = start;
        last = end;
        length = end - start;
    }
}

public static class Texts
{
    public static void Deconstruct(this string text, out string left, out string right)
    {
        var at = text.IndexOf('=', StringComparison.Ordinal);
        left = text[..at];
        right = text[(at + 1)..];
    }
}
