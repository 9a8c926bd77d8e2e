using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.BusbarTable;

/// <summary>Busbars by width and thickness.</summary>
public static class P
{
    private static readonly int[] Widths = [12, 20, 30];
    private static readonly int[] Thicknesses = [2, 5];
    public static readonly ImmutableArray<Busbar> Bars =
    [
        .. from width in Widths
           from thickness in Thicknesses
           let area = width * thickness
           where area >= 40
           orderby area descending
           select new Busbar { Name = $"{width} x {thickness}", Section = area.SquareMillimeters(), Material = ConductorMaterial.Copper },
    ];
    public static readonly Dictionary<string, double> Areas = Bars.ToDictionary(bar => bar.Name!, bar => bar.Section!.Value.SquareMillimeters);
}
