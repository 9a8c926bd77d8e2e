namespace Programs.Throws.DictionaryExceptions;

/// <summary>Keys that are missing or there already.</summary>
public static class P
{
    private static readonly Dictionary<string, int> Map = new() { ["a"] = 1 };
    public static int Missing => Map["b"];
    public static Dictionary<string, int> Twice => new() { { "a", 1 }, { "a", 2 } };
    public static Dictionary<int, string> ToDictionary => new[] { "x", "y" }.ToDictionary(s => s.Length);
}
