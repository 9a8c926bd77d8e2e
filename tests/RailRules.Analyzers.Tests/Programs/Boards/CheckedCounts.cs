using RailRules;

namespace Programs.Boards.CheckedCounts;

/// <summary>Counts in checked arithmetic.</summary>
public static class P
{
    public static readonly int Fuses = Count(racks: 4, shelves: 6, slots: 8);
    public static readonly long Large = checked(4L * 6 * 8 * 1_000_000_000);

    private static int Count(int racks, int shelves, int slots) => checked(racks * (shelves * (slots + 1) + 2));
}
