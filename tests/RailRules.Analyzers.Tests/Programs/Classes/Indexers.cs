namespace Programs.Classes.Indexers;

/// <summary>Indexers with several parameters, ranges and overloads.</summary>
public static class P
{
    private static readonly Grid G = new(3, 2);
    public static readonly int Cell = G[2, 1];
    public static readonly string Row = G["1"];
    public static readonly int Last = G[^1];
    public static readonly int FromInterface = ((IReadOnlyTable)G)[0];
}

public interface IReadOnlyTable
{
    int this[int index] { get; }
}

public sealed class Grid(int columns, int rows) : IReadOnlyTable
{
    public int Length => columns * rows;

    public int this[int index] => index * 10;

    public int this[int column, int row] => this[row * columns + column] + 1;

    public string this[string name] => name + ":" + string.Join(',', Enumerable.Range(0, columns));
}
