namespace Programs.Classes.AnonymousTypes;

/// <summary>Anonymous types, their equality and text.</summary>
public static class P
{
    public static readonly string Text = new { Name = "a", Count = 2 }.ToString()!;
    public static readonly bool Equal = new { A = 1 }.Equals(new { A = 1 });
    public static readonly string Projected = string.Join(' ', new[] { 1, 2, 3 }.Select(n => new { n, Square = n * n }).Where(x => x.Square > 1).Select(x => $"{x.n}:{x.Square}"));
    public static readonly int Distinct = new[] { 1, 2, 3, 4 }.Select(n => new { Odd = n % 2 }).Distinct().Count();
    public static readonly string With = Run();

    private static string Run()
    {
        var one = new { Name = "x", Value = 1.5 };
        var two = one with { Value = 2.5 };
        var nested = new { one, two.Name };
        return $"{two} {one.Value} {nested.one.Name}{nested.Name}";
    }
}
