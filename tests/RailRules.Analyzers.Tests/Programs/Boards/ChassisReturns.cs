using RailRules;
using UnitsNet;

namespace Programs.Boards.ChassisReturns;

/// <summary>Fault paths through the chassis.</summary>
public static class P
{
    private static readonly Band<ElectricResistance> Chassis = Band.Of(2.Milliohms(), 20.Milliohms());
    public static readonly Rail Body = new() { ChassisReturn = Chassis, Return = Return.OfResistance(Chassis) };
    public static readonly Rail Wired = new() { ChassisReturn = null, Return = Return.Mirrored };
    public static readonly ElectricCurrent Smallest = 11.Volts() / (Chassis.Max + 15.Milliohms());
    public static readonly string Kind = Body.Return switch { { IsMirrored: true } => "mirrored", { Resistance: not null } => "known", _ => "made" };
}
