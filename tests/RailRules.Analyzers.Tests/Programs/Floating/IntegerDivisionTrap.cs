namespace Programs.Floating.IntegerDivisionTrap;

/// <summary>Division of integers before conversion.</summary>
public static class P
{
    private static readonly int Volts = 5;
    private static readonly int Ohms = 2;
    public static readonly double Trapped = Volts / Ohms;
    public static readonly double Right = (double)Volts / Ohms;
    public static readonly double AlsoRight = 1.0 * Volts / Ohms;
    public static readonly double StillTrapped = 1.0 * (Volts / Ohms);
    public static readonly float Percent = Volts * 100 / 7;
    public static readonly double Mean = new[] { 1, 2, 2 }.Average();
}
