using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.DiodeChoice;

/// <summary>A diode or an ideal switch by the loss it makes.</summary>
public static class P
{
    public static readonly Element Small = Choose(3);
    public static readonly Element Large = Choose(40);
    public static readonly ImmutableArray<string> Kinds = [.. new[] { 3.0, 9, 40 }.Select(amperes => Choose(amperes) is Switch ? "switch" : "diode")];

    private static Element Choose(double amperes)
    {
        const double drop = 0.45;
        if (drop * amperes <= 4)
            return new BlockingDiode { RatedCurrent = Math.Ceiling(amperes * 1.5).Amperes(), ForwardDrop = Band.Of(0.3.Volts(), drop.Volts()) };
        return new Switch { RatedCurrent = Math.Ceiling(amperes * 2).Amperes(), OnResistance = (4 / (amperes * amperes)).Ohms(), ReverseBlocking = true };
    }
}
