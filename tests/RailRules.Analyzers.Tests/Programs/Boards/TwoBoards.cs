using RailRules;

namespace Programs.Boards.TwoBoards;

/// <summary>One class of parts used by two boards.</summary>
public static class P
{
    public static readonly Rail OnFirst = First.Main;
    public static readonly Rail OnSecond = Second.Main;
    public static readonly bool OnePart = ReferenceEquals(((Fuse)First.Main.Path[0]).Alternates[0], ((Fuse)Second.Main.Path[0]).Alternates[0]);
}

public static class Shared
{
    public static readonly Fuse Spare = new() { PartNumber = "spare" };

    public static readonly Fuse Main = new() { RatedCurrent = 40.Amperes(), Alternates = [Spare] };
}

public static class First
{
    public static readonly Rail Main = new() { Path = [Shared.Main.As("F1")] };
}

public static class Second
{
    public static readonly Rail Main = new() { Path = [Shared.Main.As("F101")] };
}
