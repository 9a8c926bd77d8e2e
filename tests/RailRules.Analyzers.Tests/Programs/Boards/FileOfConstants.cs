using RailRules;

namespace Programs.Boards.FileOfConstants;

/// <summary>Constants of one class used in attributes of another's parts.</summary>
public static class P
{
    public static readonly Fuse Main = Series.Make(2);
    public static readonly string Note = Series.Note;
    public static readonly int Count = Series.Sizes.Count;
}

internal static class Data
{
    internal const string Maker = "invented";

    internal const double Factor = 0.75;

    internal const string Text = Maker + ", not for use";
}

public static class Series
{
    public static readonly IReadOnlyList<double> Sizes = [4, 6.3, 10, 16];

    public static string Note { get; } = $"{Data.Text}; {Data.Factor:P0}";

    public static Fuse Make(int index) => new() { PartNumber = $"S{index}", RatedCurrent = Sizes[index].Amperes(), Citation = Data.Text };
}
