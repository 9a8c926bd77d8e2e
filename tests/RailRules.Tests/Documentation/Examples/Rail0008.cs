namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use. The build says RailRulesToday=2026-07-01.</summary>
[Board]
[Waiver("RAIL0101", On = nameof(Pump), Reason = "the maker confirms 60 V in writing", ApprovedBy = "protection engineer", Until = "2027-06-30")]
[Waiver("RAIL0101", On = nameof(Mill), Reason = "stock is used up", ApprovedBy = "protection engineer", Until = "2026-06-30")]
[Waiver("RAIL0101", On = nameof(Lamp), Reason = "as the pump's", ApprovedBy = "protection engineer")]
public static class Rail0008
{
    static readonly Supply Plant = new() { Voltage = 54.Volts(), TransientMax = 60.Volts(), ContinuousCurrent = 100.Amperes() };

    static readonly Fuse Reed58 = new() { RatedCurrent = 20.Amperes(), DcVoltageRating = 58.Volts() };

    static readonly Fuse Reed80 = Reed58 with { DcVoltageRating = 80.Volts() };

    static readonly Rail Pump = new() { From = Plant, Path = [Reed58.As("F1")] };

    static readonly Rail Mill = new() { From = Plant, Path = [Reed58.As("F2")] };

    static readonly Rail Lamp = new() { From = Plant, Path = [Reed80.As("F3")] };
}
