namespace Programs.Patterns.SwitchEvaluatesOnce;

/// <summary>The governing expression is evaluated once.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var calls = 0;
        int Next() => ++calls;
        var word = Next() switch
        {
            > 5 => "many",
            3 => "three",
            1 or 2 => "few",
            _ => "other",
        };
        var second = (Next(), Next()) switch
        {
            (1, _) => "a",
            (_, 3) => "b",
            _ => "c",
        };
        return $"{word} {second} {calls}";
    }
}
