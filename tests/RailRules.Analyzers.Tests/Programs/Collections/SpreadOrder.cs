using System.Collections.Immutable;

namespace Programs.Collections.SpreadOrder;

/// <summary>Elements are evaluated left to right.</summary>
public static class P
{
    public static readonly string Order = Run();
    public static readonly ImmutableArray<int> Filtered = [.. Enumerable.Range(0, 10).Where(i => i % 3 == 0), 100, .. new[] { 1, 2 }.Select(i => i * i)];

    private static string Run()
    {
        var log = "";
        int T(int value)
        {
            log += value;
            return value;
        }

        int[] inner = [T(1), T(2)];
        int[] outer = [T(3), .. inner, T(4), .. new[] { T(5) }];
        return log + ":" + string.Join(',', outer);
    }
}
