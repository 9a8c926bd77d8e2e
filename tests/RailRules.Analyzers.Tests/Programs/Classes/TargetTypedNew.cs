namespace Programs.Classes.TargetTypedNew;

/// <summary>New without a type, wherever a type is known.</summary>
public static class P
{
    private static readonly Part Field = new("a");
    public static readonly Part[] Array = [new("b"), new("c") { Count = 2 }];
    public static readonly Dictionary<string, Part> Map = new() { ["x"] = new("d") };
    public static readonly string Argument = Use(new("e") { Count = 5 });
    public static readonly Part Returned = Make();
    public static readonly List<int> Capacity = new(10) { 1 };
    public static readonly Point Struct = new(1, 2);
    public static readonly (Part, Point) Tuple = (new("t"), new(3, 4));
    public static readonly Part Conditional = Field.Count > 0 ? new("yes") : new("no");

    private static string Use(Part part) => part.Name + part.Count;

    private static Part Make() => new("made");
}

public sealed record Part(string Name)
{
    public int Count { get; init; }
}

public readonly record struct Point(int X, int Y);
