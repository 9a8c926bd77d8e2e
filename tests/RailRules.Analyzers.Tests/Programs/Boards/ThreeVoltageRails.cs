using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.ThreeVoltageRails;

/// <summary>A table of outputs of one converter.</summary>
public static class P
{
    private static readonly Rail Bus = new() { From = new Supply("Plant") { Voltage = 54.Volts() } };
    private static readonly Converter Brick = new() { Input = Bus, Output = 12.Volts(), Efficiency = 95.Percent() };
    public static readonly ImmutableArray<Rail> Outputs = [.. Make(("3V3", 3.3, 40), ("1V8", 1.8, 20), ("0V9", 0.9, 90))];
    public static readonly double Watts = Outputs.Sum(rail => (double)rail.Loads[0].Power!.Value.Max.Watts);

    private static IEnumerable<Rail> Make(params (string Name, double Volts, double Amperes)[] outputs)
    {
        foreach (var (name, volts, amperes) in outputs)
        {
            var stage = new Converter { Name = name + " stage", Input = new Rail { Name = name + " feed", From = Brick }, Output = Band.Of((volts * 0.98).Volts(), (volts * 1.02).Volts()) };
            yield return new Rail { Name = name, From = stage, Loads = [new() { Power = (volts * amperes).Watts() }] };
        }
    }
}
