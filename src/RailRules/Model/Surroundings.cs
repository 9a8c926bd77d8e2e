using System.Collections.Immutable;
using UnitsNet;

namespace RailRules;

/// <summary>What surrounds a rail or a device: air, site, shaking, and what is demanded of parts there.</summary>
public sealed record Surroundings
{
    /// <summary>Temperature of the air at the device (°C), not of the room and not of the device's body.</summary>
    public Band<Temperature>? Ambient { get; init; }

    /// <summary>What neighbouring devices add to the air temperature at the device (K).</summary>
    public TemperatureDelta? HeatOfNeighbours { get; init; }

    /// <summary>Highest site above sea level (m).</summary>
    public Length? Altitude { get; init; }

    /// <summary>Air speed at the device (m/s).</summary>
    public Speed? AirSpeed { get; init; }

    /// <summary>Vibration, root mean square (m/s²).</summary>
    public Acceleration? Vibration { get; init; }

    /// <summary>Thermal cycles a day.</summary>
    public double? ThermalCyclesPerDay { get; init; }

    /// <summary>Qualifications that parts here must have, by exact name.</summary>
    public ImmutableArray<string> RequiredQualifications { get; init; } = [];
}
