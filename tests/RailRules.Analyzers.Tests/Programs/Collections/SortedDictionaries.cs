namespace Programs.Collections.SortedDictionaries;

/// <summary>Keys in order.</summary>
public static class P
{
    public static readonly string Text = Build();

    private static string Build()
    {
        var sorted = new SortedDictionary<int, string> { [5] = "five", [1] = "one" };
        sorted[3] = "three";
        sorted.Remove(5);
        return string.Join(' ', sorted.Select(p => $"{p.Key}:{p.Value}"));
    }
}
