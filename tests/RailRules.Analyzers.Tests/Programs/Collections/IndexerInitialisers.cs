namespace Programs.Collections.IndexerInitialisers;

/// <summary>Initialisers that call a type's own indexer.</summary>
public static class P
{
    private static readonly Table Made = new() { ["r", 1] = 2.5, ["s", 2] = 5, Scale = 2 };
    public static readonly double R = Made["r", 1];
    public static readonly double S = Made["s", 2];
    public static readonly double Missing = Made["x", 0];
    public static readonly int Count = Made.Count;
}

public sealed class Table
{
    private readonly Dictionary<(string, int), double> cells = [];

    public double Scale { get; set; } = 1;

    public int Count => cells.Count;

    public double this[string row, int column]
    {
        get => cells.TryGetValue((row, column), out var value) ? value * Scale : -1;
        set => cells[(row, column)] = value;
    }
}
