using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.ClearingIntegrals;

/// <summary>Clearing I²t scaled with voltage.</summary>
public static class P
{
    public static readonly ImmutableArray<ClearingIntegral> Scaled = [.. new[] { 24, 48, 80.0 }.Select(At)];
    public static readonly Fuse Part = new() { MeltingIntegral = 320.AmpereSquaredSeconds(), ClearingIntegrals = Scaled };
    public static readonly double Factor = Scaled[2].Value!.Value / Part.MeltingIntegral!.Value.Min;

    private static ClearingIntegral At(double volts) => new()
    {
        Value = 320.AmpereSquaredSeconds() * (1.6 + 1.2 * volts / 80),
        Voltage = volts.Volts(),
        TimeConstant = 2.Milliseconds(),
        Current = (10 * 25).Amperes(),
    };
}
