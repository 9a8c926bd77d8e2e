using RailRules;

namespace Programs.Boards.BridgeOfResistances;

/// <summary>Series and parallel resistances as operators of an own type.</summary>
public static class P
{
    public static readonly double Network = ((R)2 + ((R)6 | (R)3) + (R)(1.5)).Ohms;
    public static readonly Wire Equivalent = new() { Resistance = ((R)0.004 | (R)0.004).Ohms.Ohms() };
    public static readonly R Sum = new[] { (R)1, (R)2, (R)3 }.Aggregate((a, b) => a + b);
}

public readonly record struct R(double Ohms)
{
    public static explicit operator R(double ohms) => new(ohms);

    public static R operator +(R a, R b) => new(a.Ohms + b.Ohms);

    public static R operator |(R a, R b) => new(a.Ohms * b.Ohms / (a.Ohms + b.Ohms));
}
