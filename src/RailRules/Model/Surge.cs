using UnitsNet;

namespace RailRules;

/// <summary>An event shorter than 1 ms that raises the rail's voltage.</summary>
public sealed record Surge
{
    /// <summary>Open-circuit voltage of the surge (V).</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>Resistance behind the surge (Ω).</summary>
    public ElectricResistance? SourceResistance { get; init; }

    /// <summary>Front time of the wave (s), e.g. 8 µs of 8/20.</summary>
    public Duration? Front { get; init; }

    /// <summary>Time to half value (s), e.g. 20 µs of 8/20.</summary>
    public Duration? HalfValue { get; init; }

    /// <summary>How often the surge comes in the life of the equipment.</summary>
    public double? Repeats { get; init; }
}
