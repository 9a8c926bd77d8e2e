using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.RackOfRacks;

/// <summary>Rails by nested loops with running numbers.</summary>
public static class P
{
    public static readonly ImmutableArray<Rail> All = Build(2, 2, 2);
    public static readonly string First = All[0].Name + " " + All[^1].Name;

    private static ImmutableArray<Rail> Build(int racks, int shelves, int slots)
    {
        var rails = new List<Rail>();
        for (var rack = 'A'; rack < 'A' + racks; rack++)
        {
            for (var shelf = 1; shelf <= shelves; shelf++)
            {
                var from = new Rail { Name = $"{rack}{shelf}" };
                for (var slot = 1; slot <= slots; slot++)
                    rails.Add(new Rail { Name = $"{rack}{shelf}.{slot:00} #{rails.Count}", From = from });
            }
        }

        return [.. rails];
    }
}
