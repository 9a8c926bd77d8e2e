namespace Programs.Generics.Variance;

/// <summary>Interfaces and delegates that vary.</summary>
public static class P
{
    public static readonly string Joined = Join(new List<string> { "a", "b" });
    public static readonly string Action = Run();
    public static readonly object Made = Use(() => "text");
    public static readonly int Compared = Compare(new ByText(), "b", "a");

    private static string Join(IEnumerable<object> items) => string.Join('-', items);

    private static string Run()
    {
        var log = "";
        Action<object> any = o => log += o;
        Action<string> text = any;
        text("x");
        return log;
    }

    private static object Use(Func<object> make) => make();

    private static int Compare(IComparer<string> comparer, string a, string b) => Math.Sign(comparer.Compare(a, b));
}

public sealed class ByText : IComparer<object>
{
    public int Compare(object? x, object? y) => string.CompareOrdinal(x?.ToString(), y?.ToString());
}
