using System.Collections.Immutable;

namespace Programs.Records.Inheritance;

/// <summary>Derived records keep their type in equality, text and with.</summary>
public static class P
{
    private static readonly Shape Round = new Circle("c", 2);
    private static readonly Shape Square = new Box("b", 3, 4);
    public static readonly string RoundText = Round.ToString();
    public static readonly string SquareText = Square.ToString();
    public static readonly Shape Renamed = Round with { Name = "d" };
    public static readonly string RenamedText = Renamed.ToString();
    public static readonly bool StillCircle = Renamed is Circle { Radius: 2 };
    public static readonly bool EqualAcross = new Circle("c", 2) == Round;
    public static readonly bool DifferentTypes = new Shape("c") == Round;
    public static readonly bool BaseEqual = new Shape("c").Equals(new Shape("c"));
    public static readonly ImmutableArray<double> Areas = [.. new[] { Round, Square }.Select(s => Math.Round(s.Area, 3))];
}

public record Shape(string Name)
{
    public virtual double Area => 0;
}

public record Circle(string Name, double Radius) : Shape(Name)
{
    public override double Area => Math.PI * Radius * Radius;
}

public record Box(string Name, double Width, double Height) : Shape(Name)
{
    public override double Area => Width * Height;
}
