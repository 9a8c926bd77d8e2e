using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.CurrentLimits;

/// <summary>Current limits of every style.</summary>
public static class P
{
    public static readonly ImmutableArray<CurrentLimit> Limits =
    [
        new() { Level = Band.Of(52.Amperes(), 60.Amperes()), Style = CurrentLimitStyle.ConstantCurrent, Response = Band.Of(10.Microseconds(), 50.Microseconds()) },
        new() { Level = 30.Amperes(), Style = CurrentLimitStyle.Foldback, FoldbackCurrent = Band.Of(4.Amperes(), 8.Amperes()) },
        new() { Level = 15.Amperes(), Style = CurrentLimitStyle.Hiccup, OnTime = 5.Milliseconds(), OffTime = 1.Seconds() },
        new() { Style = CurrentLimitStyle.LatchOff, TripTime = 20.Milliseconds(), LimitedBy = LimitedBy.Firmware },
    ];
    public static readonly string Styles = string.Join(' ', Limits.Select(limit => limit.Style));
    public static readonly ImmutableArray<Supply> Supplies = [.. Limits.Select((limit, i) => new Supply { Name = $"PSU {i}", Voltage = 54.Volts(), CurrentLimit = limit })];
    public static readonly double Duty = Limits[2].OnTime!.Value / (Limits[2].OnTime!.Value + Limits[2].OffTime!.Value);
}
