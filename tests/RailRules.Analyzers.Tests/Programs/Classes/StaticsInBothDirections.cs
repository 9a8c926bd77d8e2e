namespace Programs.Classes.StaticsInBothDirections;

/// <summary>Two classes read each other, each only what the other has before it turns to the first: the same wherever the program begins.</summary>
public static class P
{
    public static readonly double Volts = 54;
    public static readonly double Amperes = 20;
    public static readonly double Power = Derived.Factor * Volts;

    public static string Text => $"{Derived.Factor} {Derived.Watts} {Power}";
}

public static class Derived
{
    public static readonly double Factor = 0.75;
    public static readonly double Watts = P.Volts * P.Amperes;
}
