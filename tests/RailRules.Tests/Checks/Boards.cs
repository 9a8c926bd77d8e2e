using CsCheck;

namespace RailRules.Tests.Checks;

/// <summary>Random trees of rails of which some resistances and returns are not stated.</summary>
internal sealed record Boards(int Seed, int Size, bool Resistive)
{
    internal static readonly Gen<Boards> Incomplete = Gen.Select(Gen.Int[1, 1 << 30], Gen.Int[1, 7], Gen.Bool).Select((seed, size, resistive) => new Boards(seed, size, resistive));

    /// <summary>The values (0 to 1 of their bounds) that complete the board.</summary>
    internal double[] Completion
    {
        get
        {
            var random = new Random(Seed ^ 0x55aa);
            return [.. Enumerable.Range(0, 64).Select(_ => random.NextDouble())];
        }
    }

    /// <summary>The board with its absent data left out, or with values inside their bounds.</summary>
    internal IEnumerable<Rail> Rails(double[]? values)
    {
        var random = new Random(Seed);
        var next = 0;
        double? Absent(double most) => values is null ? null : values[next++] * most;
        var supply = new Supply { Name = "Plant", Voltage = Band.Of(42.Volts(), 57.Volts()) };
        var rails = new List<Rail>();
        for (var i = 0; i < Size; i++)
        {
            var rated = 5 + (20 * random.NextDouble());
            double? fuse = random.Next(2) == 0 ? 0.01 * random.NextDouble() : Absent(Network.CompactDrop / rated);
            double? back = random.Next(2) == 0 ? 0.01 * random.NextDouble() : random.Next(3) == 0 ? Absent(0.5) : 0;
            var demand = random.NextDouble();
            double? floor = random.Next(3) > 0 ? 36 : null;
            rails.Add(new Rail
            {
                Name = $"Rail {i}",
                From = i == 0 || random.Next(3) == 0 ? supply : rails[random.Next(i)],
                Path = [new Fuse { RatedCurrent = rated.Amperes(), ColdResistance = fuse is { } ohms ? ohms.Ohms() : null }],
                Return = back is { } value ? Return.OfResistance(value.Ohms()) : null,
                Loads =
                [
                    new()
                    {
                        Power = (demand * 150).Watts(),
                        MinVoltage = floor is { } volts ? volts.Volts() : null,
                        Resistance = Resistive && random.Next(2) == 0 ? (10 + (100 * random.NextDouble())).Ohms() : null,
                    },
                ],
            });
        }

        return rails;
    }
}
