namespace Programs.Nullables.Coalescing;

/// <summary>Chains of ?? and evaluation only as needed.</summary>
public static class P
{
    public static readonly string Log = Run();
    public static readonly double Chain = ((double?)null ?? (int?)null ?? 2.5) + ((double?)null ?? 4);
    public static readonly string Text = (string?)null ?? "" ?? "never";
    public static readonly int? StillNull = (int?)null ?? (int?)null;
    public static readonly object Widened = (int?)null ?? 3L;

    private static string Run()
    {
        var log = "";
        int? Try(string name, int? value)
        {
            log += name;
            return value;
        }

        var first = Try("a", null) ?? Try("b", 2) ?? Try("c", 3);
        var second = Try("d", 4) ?? Try("e", 5);
        return $"{log} {first} {second}";
    }
}
