using RailRules;

namespace Programs.Boards.LazyParts;

/// <summary>Parts that are made only when they are used.</summary>
public static class P
{
    public static readonly Rail Used = new() { Path = [Store.Small.As("F1")] };
    public static readonly bool Fresh = !ReferenceEquals(Store.Small, Store.Small);
    public static readonly bool Kept = ReferenceEquals(Store.Large, Store.Large);
}

public static class Store
{
    public static Fuse Small => new() { RatedCurrent = 2.Amperes() };

    public static Fuse Large { get; } = new() { RatedCurrent = 200.Amperes() };
}
