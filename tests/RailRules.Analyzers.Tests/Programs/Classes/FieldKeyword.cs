namespace Programs.Classes.FieldKeyword;

/// <summary>The field keyword in accessors.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static readonly int Lazy = new Cache().Twice;

    private static string Run()
    {
        var box = new Box { Name = "  padded " };
        box.Count = -5;
        box.Count++;
        return $"[{box.Name}] {box.Count} {box.Ready}";
    }
}

public sealed class Box
{
    public string Name
    {
        get => field;
        set => field = value.Trim();
    } = "none";

    public int Count
    {
        get;
        set => field = Math.Max(0, value);
    }

    public bool Ready { get => field || Count > 0; set; }
}

public sealed class Cache
{
    private int calls;

    public string? Text => field ??= "made" + ++calls;

    public int Twice => (Text + Text)!.Length + calls;
}
