namespace Programs.Functions.HigherOrder;

/// <summary>Functions that take and give functions.</summary>
public static class P
{
    public static readonly int Composed = Compose<int, int, int>(x => x + 1, x => x * 10)(4);
    public static readonly int Curried = Add(3)(4);
    public static readonly double Derivative = Math.Round(Derive(x => x * x)(3), 6);
    public static readonly int Folded = Fold([1, 2, 3, 4], 0, (a, b) => a * 10 + b);
    public static readonly string Piped = Apply("fuse", s => s.ToUpperInvariant(), s => s + "!", s => s + s.Length);
    public static readonly Func<int, bool> Even = n => n % 2 == 0;
    public static readonly int Count = Enumerable.Range(0, 9).Count(Even);

    private static Func<TA, TC> Compose<TA, TB, TC>(Func<TA, TB> first, Func<TB, TC> second) => x => second(first(x));

    private static Func<int, int> Add(int a) => b => a + b;

    private static Func<double, double> Derive(Func<double, double> f) => x => (f(x + 1e-6) - f(x - 1e-6)) / 2e-6;

    private static T Fold<T>(IEnumerable<T> values, T seed, Func<T, T, T> step)
    {
        foreach (var value in values)
            seed = step(seed, value);
        return seed;
    }

    private static string Apply(string text, params Func<string, string>[] steps)
    {
        foreach (var step in steps)
            text = step(text);
        return text;
    }
}
