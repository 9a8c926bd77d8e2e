namespace Programs.ControlFlow.ScopesShadow;

/// <summary>The same name in sibling scopes and in lambdas.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        {
            var x = 1;
            log += x;
        }

        {
            var x = "two";
            log += x;
        }

        for (var x = 3; x < 4; x++)
            log += x;
        foreach (var x in new[] { 4.5 })
            log += x;
        Func<int, int> square = static x => x * x;
        int Local(int log2) => log2 + 1;
        log += square(5) + Local(6);
        return log;
    }
}
