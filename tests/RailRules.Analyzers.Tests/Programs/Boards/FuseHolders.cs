using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.FuseHolders;

/// <summary>A holder that derates its fuse.</summary>
public static class P
{
    private static readonly FuseHolder Holder = new() { RatedCurrent = 30.Amperes(), AcceptedPower = 4.Watts(), Derating = [new(25.Celsius(), 1), new(70.Celsius(), 0.6)] };
    public static readonly ImmutableArray<Element> Place = [Holder.As("X1"), new Fuse { RatedCurrent = 20.Amperes(), VoltageDrop = 0.12.Volts() }.As("F1")];
    public static readonly bool Accepted = 20.Amperes() * 0.12.Volts() <= Holder.AcceptedPower!.Value;
    public static readonly decimal Power = (20.Amperes() * 0.12.Volts()).Watts;
}
