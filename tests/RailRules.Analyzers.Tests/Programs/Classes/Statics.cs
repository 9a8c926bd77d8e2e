namespace Programs.Classes.Statics;

/// <summary>Static helper classes, constants and nested types.</summary>
public static class P
{
    public static readonly double Area = Copper.Area(1.6);
    public static readonly double Nested = Copper.Table.Sizes[1] * Copper.Table.Factor;
    public static readonly string Name = Copper.Table.Name;
    public static readonly double Const = Copper.Resistivity;
}

public static class Copper
{
    public const double Resistivity = 0.0175;

    private static readonly double Quarter = Math.PI / 4;

    public static double Area(double diameter) => Quarter * diameter * diameter;

    public static class Table
    {
        public const string Name = nameof(Table) + "!";

        public static readonly double[] Sizes = [1.5, 2.5, 4];

        public static double Factor { get; } = Area(2) / Quarter;
    }
}
