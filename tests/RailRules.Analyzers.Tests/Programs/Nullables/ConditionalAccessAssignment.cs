namespace Programs.Nullables.ConditionalAccessAssignment;

/// <summary>Assignment through ?. happens only where there is an object.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var calls = 0;
        int Next() => ++calls;
        Cell? cell = new();
        Cell? none = null;
        cell?.Value = Next();
        none?.Value = Next();
        cell?.Value += 10;
        none?.Value += Next();
        return $"{cell!.Value} {calls}";
    }
}

public sealed class Cell
{
    public int Value { get; set; }
}
