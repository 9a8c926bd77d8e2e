namespace RailRules.Tests.Cases.Boards;

/// <summary>case-036: 0.4 mm trace asked to carry 5 A. Invented, not for use.</summary>
[Board]
public static class Case036
{
    public static readonly Supply Adapter = new() { Voltage = 5.Volts() }; // the case does not state the voltage

    private static readonly Load Board = new() { Name = "Board", Current = 5.Amperes() };

    public static readonly Rail AsDrawn = Of(0.4, 70);

    public static readonly Rail Wider = Of(1.2, 70);

    public static readonly Rail WiderThin = Of(1.2, 35);

    private static Rail Of(double millimeters, double micrometers, [System.Runtime.CompilerServices.CallerMemberName] string name = "") => new()
    {
        Name = name,
        From = Adapter,
        Path = [new Trace { Name = "Neck", Length = 20.Millimeters(), Width = millimeters.Millimeters(), Thickness = micrometers.Micrometers(), Inner = false }],
        Return = Return.OfResistance(0.Ohms()),
        Loads = [Board],
    };
}
