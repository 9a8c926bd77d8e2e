using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A trace of a printed board.
/// </summary>
public sealed record Trace : Element
{
    /// <summary>Makes a trace.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Trace([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Length one way (m).</summary>
    public Length? Length { get; init; }

    /// <summary>Width at its narrowest place (m).</summary>
    public Length? Width { get; init; }

    /// <summary>Thickness of finished copper (m).</summary>
    public Length? Thickness { get; init; }

    /// <summary>Whether it lies in an inner layer.</summary>
    public bool? Inner { get; init; }

    /// <summary>Resistance one way at 20 °C (Ω); null: worked out from geometry.</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Continuous current (A), where known from test; null: worked out by IPC-2221.</summary>
    public ElectricCurrent? Ampacity { get; init; }

    /// <summary>Highest temperature in service (°C): the laminate.</summary>
    public Temperature? TemperatureLimit { get; init; }

    /// <summary>Highest temperature at the end of a short circuit (°C).</summary>
    public Temperature? ShortTimeLimit { get; init; }
}
