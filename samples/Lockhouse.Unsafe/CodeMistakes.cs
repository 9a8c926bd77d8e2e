using RailRules;

namespace Lockhouse.Unsafe;

/// <summary>Mistakes in the code itself rather than in a rail. All data invented, not for use.</summary>
[Board]
public static class Unevaluated
{
    private static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts(), ContinuousCurrent = 30.Amperes(), ProspectiveFault = new() { Current = 1.Kiloamperes(), TimeConstant = 1.Milliseconds() } };

    public static readonly Rail Pump = new()
    {
        From = Plant,
        Path = [Parts.Reed25 with { Designator = "F31", RatedCurrent = double.Parse(File.ReadAllText("rating.txt")).Amperes() }], // RAIL0001
        Return = Return.Mirrored,
        Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() }],
        Surroundings = LockhouseShelf.Cabin,
    };
}

/// <summary>Uses the trace of the parts list whose lowest resistance is above its highest; the list says so, here nothing that depends on it is judged.</summary>
[Board]
public static class Swapped
{
    private static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts(), ContinuousCurrent = 30.Amperes(), ProspectiveFault = new() { Current = 1.Kiloamperes(), TimeConstant = 1.Milliseconds() } };

    public static readonly Rail Pump = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F37"), Parts.SwappedTrace],
        Return = Return.Mirrored,
        Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() }],
        Surroundings = LockhouseShelf.Cabin,
    };
}

/// <summary>Computes for ever.</summary>
[Board]
public static class Endless
{
    public static readonly Rail Pump = new() { From = LockhouseShelf.Plant, Path = [Parts.Reed25.As("F32")], Loads = [new() { Power = Sum().Watts() }] };

    private static double Sum()
    {
        var sum = 0.0;
        while (sum >= 0) { sum += 1; } // RAIL0002

        return sum;
    }
}

/// <summary>Throws, and reads what has no value yet.</summary>
[Board]
public static class Thrower
{
    public static readonly Rail Pump = new()
    {
        From = LockhouseShelf.Plant,
        Path = [Fuses("F33")],
        Loads = [new() { Power = 100.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() }],
    };

    public static readonly Rail Mill = new()
    {
        From = LockhouseShelf.Plant,
        Path = [Late], // RAIL0011
        Loads = [new() { Power = 100.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() }],
    };

    private static readonly Fuse Late = Parts.Reed25.As("F34");

    private static Fuse Fuses(string designator) =>
        designator.StartsWith("F1", StringComparison.Ordinal) ? Parts.Reed25.As(designator) : throw new InvalidOperationException($"no fuse for {designator}"); // RAIL0010
}

/// <summary>Its rail is not static.</summary>
[Board]
public class Instance
{
    public static readonly Rail Main = new() { From = LockhouseShelf.Plant, Path = [Parts.Weir200.As("F35")], Return = Return.Mirrored, Surroundings = LockhouseShelf.Cabin };

    public readonly Rail Pump = new() { From = Main }; // RAIL0012
}

/// <summary>No board leads here.</summary>
public static class Forgotten
{
    public static readonly Rail Pump = new() { From = LockhouseShelf.Plant, Path = [Parts.Reed20.As("F36")] }; // RAIL0009
}
