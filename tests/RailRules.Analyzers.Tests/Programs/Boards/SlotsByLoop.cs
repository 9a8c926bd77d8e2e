using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.SlotsByLoop;

/// <summary>Rails made in a loop with a builder.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = 54.Volts() };
    public static readonly ImmutableArray<Rail> Rails = Build([600, 600, 350, 120]);

    private static ImmutableArray<Rail> Build(double[] watts)
    {
        var rails = ImmutableArray.CreateBuilder<Rail>();
        for (var slot = 1; slot <= watts.Length; slot++)
        {
            var need = watts[slot - 1] / 43;
            var rated = need switch
            {
                > 12 => 25,
                > 7 => 16,
                _ => 6.3,
            };
            rails.Add(new Rail
            {
                Name = $"Slot {slot}",
                From = Plant,
                Path = [new Fuse { RatedCurrent = rated.Amperes() }.As("F" + (slot + 10))],
                Loads = [new() { Power = watts[slot - 1].Watts() }],
            });
        }

        return rails.ToImmutable();
    }
}
