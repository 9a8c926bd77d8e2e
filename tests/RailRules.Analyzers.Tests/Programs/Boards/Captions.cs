using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Captions;

/// <summary>Captions of rails by interpolation.</summary>
public static class P
{
    private static readonly Rail Bus = new() { Name = "Bus", From = new Supply { Voltage = 54.Volts() } };
    public static readonly ImmutableArray<string> Captions = [.. Enumerable.Range(1, 3).Select(i => $"{Bus.Name}.{i:00} ({54 - 0.15 * i:0.00} V)")];
    public static readonly string Upper = Bus.Name.ToUpperInvariant();
    public static readonly string Path = string.Join(" > ", Chain().Select(rail => rail.Name));

    private static IEnumerable<Rail> Chain()
    {
        Source? at = new Rail { Name = "Leaf", From = new Rail { Name = "Branch", From = Bus } };
        while (at is Rail rail)
        {
            yield return rail;
            at = rail.From;
        }
    }
}
