using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.LoadGroups;

/// <summary>Loads grouped by their supply voltage.</summary>
public static class P
{
    private static readonly (string Name, int Volts, double Watts)[] Loads = [("cpu", 12, 95), ("disk", 5, 7), ("gpu", 12, 220), ("usb", 5, 2.5), ("fan", 12, 6)];
    public static readonly ImmutableArray<Rail> Rails =
    [
        .. from load in Loads
           group load by load.Volts into rail
           orderby rail.Key
           select new Rail
           {
               Name = $"{rail.Key} V",
               Loads = [.. from load in rail orderby load.Watts descending select new Load { Name = load.Name, Power = load.Watts.Watts() }],
           },
    ];
    public static readonly Dictionary<int, double> Watts = Loads.GroupBy(load => load.Volts).ToDictionary(rail => rail.Key, rail => rail.Sum(load => load.Watts));
}
