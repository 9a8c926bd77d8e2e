using RailRules;

namespace Programs.Boards.PartialBoard;

/// <summary>A board in two partial halves.</summary>
public static partial class P
{
    public static readonly Supply Plant = new() { Voltage = 54.Volts() };
    public static readonly Rail Bus = new() { From = Plant, Path = [Main()] };
}

public static partial class P
{
    public static readonly Rail Sled = new() { From = Bus, Path = [Main() with { RatedCurrent = 20.Amperes() }] };

    private static Fuse Main() => new() { RatedCurrent = 100.Amperes() };
}
