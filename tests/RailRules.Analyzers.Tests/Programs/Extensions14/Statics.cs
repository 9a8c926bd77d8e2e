// newest compiler only
namespace Programs.Extensions14.Statics;

/// <summary>Static extension members and operators.</summary>
public static class P
{
    public static readonly double Golden = double.GoldenRatio;
    public static readonly string Dashes = string.Dashes(3);
    public static readonly Span Sum = new Span(1, 3) + new Span(2, 9);
}

public sealed record Span(int Start, int End);

public static class Extras
{
    extension(double)
    {
        public static double GoldenRatio => (1 + Math.Sqrt(5)) / 2;
    }

    extension(string)
    {
        public static string Dashes(int count) => new('-', count);
    }

    extension(Span)
    {
        public static Span operator +(Span a, Span b) => new(Math.Min(a.Start, b.Start), Math.Max(a.End, b.End));
    }
}
