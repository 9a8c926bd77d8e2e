using RailRules;

namespace Programs.Boards.MinimumSection;

/// <summary>The smallest standard section that keeps a drop.</summary>
public static class P
{
    private static readonly double[] Standard = [0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35];
    public static readonly double Short = Section(10, 2, 0.5);
    public static readonly double Long = Section(60, 8, 0.5);
    public static readonly Wire Chosen = new() { Section = Section(60, 8, 0.5).SquareMillimeters(), Length = 8.Meters() };

    private static double Section(double amperes, double meters, double drop)
    {
        var i = 0;
        while (i < Standard.Length - 1 && 2 * 0.0178 * meters / Standard[i] * amperes > drop)
            i++;
        return Standard[i];
    }
}
