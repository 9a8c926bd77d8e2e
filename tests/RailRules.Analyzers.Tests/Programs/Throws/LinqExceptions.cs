namespace Programs.Throws.LinqExceptions;

/// <summary>What LINQ throws.</summary>
public static class P
{
    private static readonly int[] Empty = [];
    private static readonly int[] Two = [1, 2];
    public static int First => Empty.First();
    public static int FirstMatch => Two.First(n => n > 5);
    public static int Single => Two.Single();
    public static double Average => Empty.Average();
    public static int Max => Empty.Max();
    public static int Aggregate => Empty.Aggregate((a, b) => a + b);
    public static int Last => Two.Last(n => n > 5);
    public static int ByLambda => Two.Select(n => n / (n - 2)).Sum();
    public static int CheckedSum => new[] { int.MaxValue, 1 }.Sum();
}
