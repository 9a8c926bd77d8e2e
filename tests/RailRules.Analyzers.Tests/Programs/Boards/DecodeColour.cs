using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.DecodeColour;

/// <summary>Resistor values from colour rings.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Ohms = [.. new[] { "brown black red", "yellow violet gold", "red red orange" }.Select(Decode)];
    public static readonly ImmutableArray<SenseResistor> Resistors = [.. new[] { "brown black silver" }.Select(rings => new SenseResistor { Resistance = Decode(rings).Ohms() })];

    private static double Decode(string rings)
    {
        string[] colours = ["black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"];
        return rings.Split(' ') switch
        {
            [var a, var b, "gold"] => Digits(a, b) * 0.1,
            [var a, var b, "silver"] => Digits(a, b) * 0.01,
            [var a, var b, var c] => Digits(a, b) * Math.Pow(10, Array.IndexOf(colours, c)),
            _ => double.NaN,
        };

        int Digits(string a, string b) => Array.IndexOf(colours, a) * 10 + Array.IndexOf(colours, b);
    }
}
