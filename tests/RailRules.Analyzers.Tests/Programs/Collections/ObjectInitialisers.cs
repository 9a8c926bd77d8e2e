using System.Collections.Immutable;

namespace Programs.Collections.ObjectInitialisers;

/// <summary>Nested initialisers set into what is there.</summary>
public static class P
{
    private static readonly Cabinet Made = new()
    {
        Name = "C1",
        Door = { Width = 600, Hinges = { "top", "bottom" } },
        Slots = { [1] = "fan", [3] = "psu" },
    };
    public static readonly string Name = Made.Name;
    public static readonly int Width = Made.Door.Width;
    public static readonly int Height = Made.Door.Height;
    public static readonly ImmutableArray<string> Hinges = [.. Made.Door.Hinges];
    public static readonly Dictionary<int, string> Slots = Made.Slots;
}

public sealed class Cabinet
{
    public string Name { get; set; } = "";

    public Door Door { get; } = new();

    public Dictionary<int, string> Slots { get; } = new() { [0] = "base" };
}

public sealed class Door
{
    public int Width { get; set; } = 1;

    public int Height { get; set; } = 2000;

    public List<string> Hinges { get; } = ["middle"];
}
