namespace RailRules.Tests.Cases.Boards;

/// <summary>case-076: Same printed PTC number from two makers: 60 V or 250 V. Invented, not for use.</summary>
[Board]
public static class Case076
{
    public static readonly Supply Stack = new() { Voltage = 65.Volts() };

    private static readonly ResettableFuse First = new() { Name = "ALT_1", MaxVoltage = 60.Volts() };

    private static readonly ResettableFuse Second = new() { Name = "ALT_2", MaxVoltage = 250.Volts() };

    /// <summary>Bought by number only, so that either part may be fitted.</summary>
    public static readonly Rail WithFirst = new() { From = Stack, Path = [First with { Alternates = [Second] }] };

    public static readonly Rail WithSecond = new() { From = Stack, Path = [Second with { Alternates = [First] }] };
}
