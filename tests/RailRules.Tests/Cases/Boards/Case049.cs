namespace RailRules.Tests.Cases.Boards;

/// <summary>case-049: Electronic fuse starts eight 220 uF loads that already draw 0.5 A each. Invented, not for use.</summary>
[Board]
public static class Case049
{
    private static readonly Supply Unit = new() { Voltage = 24.Volts() };

    /// <summary>It limits at 7.92 A; at the 95 W of this start its heat ends it after 3 ms, by the case's curve.</summary>
    private static readonly ElectronicFuse Port = new() { Name = "U1", StartCurrent = 7.92.Amperes(), StartTimer = 3.Milliseconds() };

    private static readonly Load Module = new() { Current = 0.5.Amperes(), InputCapacitance = 220.Microfarads(), EnablesAt = EnablesAt.Zero };

    public static readonly Rail LoadsOn = new() { From = Unit, Path = [Port], Loads = [.. Enumerable.Repeat(Module, 8)] };

    public static readonly Rail LoadsHeldOff = new() { From = Unit, Path = [Port], Loads = [.. Enumerable.Repeat(Module with { EnablesAt = EnablesAt.PowerGood }, 8)] };
}
