namespace Programs.Patterns.SwitchWhen;

/// <summary>When clauses are tried in order, and see the bound variables.</summary>
public static class P
{
    public static readonly string Log = Run();

    private static string Run()
    {
        var log = "";
        bool Test(string name, bool result)
        {
            log += name;
            return result;
        }

        foreach (var value in new object[] { 5, 50, "x", 2.5 })
        {
            log += value switch
            {
                int n when Test("a", n > 10) => $"[big {n}]",
                int n when Test("b", n > 3) => $"[mid {n}]",
                string s when Test("c", s.Length > 3) => "[long]",
                string => "[short]",
                _ => "[else]",
            };
        }

        return log;
    }
}
