using System.Collections.Immutable;
using System.Globalization;
using RailRules;

namespace Programs.Boards.ParseTable;

/// <summary>A small table in a raw string, read line by line.</summary>
public static class P
{
    private const string Table = """
        part;amperes;volts
        Burdock4;4;125
        Burdock6;6.3;125
        Burdock10;10;63
        """;
    public static readonly ImmutableArray<Fuse> Fuses = [.. Table.Split('\n').Skip(1).Select(Read)];
    public static readonly double Sum = Fuses.Sum(fuse => fuse.RatedCurrent!.Value.Amperes);

    private static Fuse Read(string line)
    {
        var cells = line.Trim().Split(';');
        return new Fuse
        {
            PartNumber = cells[0],
            RatedCurrent = double.Parse(cells[1], CultureInfo.InvariantCulture).Amperes(),
            DcVoltageRating = int.Parse(cells[2], CultureInfo.InvariantCulture).Volts(),
        };
    }
}
