using RailRules;
using UnitsNet;

namespace Programs.Quantities.DecimalPower;

/// <summary>Power computes in decimal.</summary>
public static class P
{
    private static readonly Power Tenth = 0.1.Watts();
    public static readonly decimal Watts = Tenth.Watts;
    public static readonly Power Tripled = Tenth * 3;
    public static readonly decimal TripledWatts = (Tenth + Tenth + Tenth).Watts;
    public static readonly Power Sum = 0.1.Watts() + 0.2.Watts();
    public static readonly bool Exact = (0.1.Watts() + 0.2.Watts()).Watts == 0.3m;
    public static readonly decimal Kilowatts = 1234.5.Watts().Kilowatts;
    public static readonly decimal Quotient = 600.Watts() / 54.Watts();
    public static readonly Power Divided = 1.Watts() / 3;
}
