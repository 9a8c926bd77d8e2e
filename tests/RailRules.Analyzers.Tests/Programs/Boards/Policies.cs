using RailRules;

namespace Programs.Boards.Policies;

/// <summary>A policy of one's own from the default by with.</summary>
public static class P
{
    public static readonly DesignPolicy Careful = DesignPolicy.Default with { Name = "careful", FuseContinuous = 0.6, VoltageFraction = 0.8 };
    public static readonly DesignPolicy Named = new() { Name = "named", CreditCold = true };
    public static readonly Rail Bus = new() { From = new Supply { Voltage = 54.Volts() }, Policy = Careful };
    public static readonly bool Inherited = Bus.Policy == Careful && Careful.ElectronicTrip == DesignPolicy.Default.ElectronicTrip;
    public static readonly double Margin = Careful.FuseContinuous ?? 1;
}
