using RailRules;

namespace Programs.Boards.EarthedPositive;

/// <summary>Negative rails with earthed positive.</summary>
public static class P
{
    private static readonly Supply Telecom = new() { Voltage = Band.Of(40.5.Volts(), 48.Volts(), 57.Volts()), Earthing = Earthing.Positive };
    public static readonly Rail Minus48 = new() { From = Telecom, Polarity = Polarity.Negative };
    public static readonly Rail Plus = new() { From = Telecom };
    public static readonly string Text = $"{Minus48.Polarity} {Plus.Polarity:D} {Telecom.Earthing}";
}
