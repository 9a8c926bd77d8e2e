namespace Programs.Linq.Aggregates;

/// <summary>Sums, means, extremes, counts and aggregates.</summary>
public static class P
{
    private static readonly double[] D = [2.5, -1, 4];
    private static readonly string[] Words = ["pear", "fig", "apple"];
    public static readonly double Sum = D.Sum();
    public static readonly double Average = D.Average();
    public static readonly double Min = D.Min();
    public static readonly int MaxLength = Words.Max(w => w.Length);
    public static readonly string MaxBy = Words.MaxBy(w => w.Length)!;
    public static readonly string MinBy = Words.MinBy(w => w.Length)!;
    public static readonly int Count = Words.Count(w => w.Contains('p'));
    public static readonly long LongCount = Words.LongCount();
    public static readonly string Aggregate = Words.Aggregate((a, b) => a + "," + b);
    public static readonly int Seeded = Words.Aggregate(10, (n, w) => n * 2 + w.Length);
    public static readonly string Result = Words.Aggregate("", (a, w) => a + w[0], a => a.ToUpperInvariant());
    public static readonly bool All = D.All(d => d > -2) && Words.Any() && !D.Any(d => d > 5);
    public static readonly int IntSum = new[] { 1, 2 }.Sum(n => n * 10);
    public static readonly double IntAverage = new[] { 1, 2 }.Average();
    public static readonly float FloatSum = new[] { 0.1f, 0.2f, 0.3f }.Sum();
    public static readonly decimal DecimalAverage = new[] { 1m, 2m }.Average(m => m / 3);
}
