using System.Collections.Immutable;
using UnitsNet;

namespace RailRules;

/// <summary>Direct or alternating current.</summary>
public enum CurrentKind
{
    /// <summary>Direct current.</summary>
    Dc,

    /// <summary>Alternating current. An AC figure is never converted to DC.</summary>
    Ac,
}

/// <summary>What the rated current means under the standard by which the part is rated.</summary>
public enum RatingBasis
{
    /// <summary>It carries its rated current for ever (IEC 60127, IEC 60269 style).</summary>
    CarriesRating,

    /// <summary>It carries three quarters of its rated current for ever (UL 248-14 style).</summary>
    CarriesThreeQuarters,
}

/// <summary>
/// The largest current a device can break, with the conditions of the proof. IEC: rated breaking capacity; North America: interrupting rating.
/// </summary>
public sealed record InterruptingRating
{
    /// <summary>The current (A).</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>The voltage at which it was proven (V); valid at this voltage and below.</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>The time constant L/R of the test circuit (s); valid at this one and shorter.</summary>
    public Duration? TimeConstant { get; init; }

    /// <summary>DC or AC.</summary>
    public CurrentKind Kind { get; init; }
}

/// <summary>
/// The Joule integral let through until the current is gone, with the conditions of the test. IEC: operating I²t; North America: clearing I²t.
/// </summary>
public sealed record ClearingIntegral
{
    /// <summary>The clearing I²t (A²s).</summary>
    public JouleIntegral? Value { get; init; }

    /// <summary>Test voltage (V).</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>Time constant of the test circuit (s).</summary>
    public Duration? TimeConstant { get; init; }

    /// <summary>Test current (A).</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>DC or AC.</summary>
    public CurrentKind Kind { get; init; }
}

/// <summary>One point of a derating curve.</summary>
/// <param name="Ambient">Air temperature (°C).</param>
/// <param name="Factor">Share of the rating that is left there.</param>
public sealed record DeratingPoint(Temperature Ambient, double Factor);

/// <summary>One point of a derating curve against altitude.</summary>
/// <param name="Altitude">Height above sea level (m).</param>
/// <param name="Factor">Share of the rating that is left there.</param>
public sealed record AltitudePoint(Length Altitude, double Factor);

/// <summary>One point of a time-current curve.</summary>
/// <param name="Current">Current (A).</param>
/// <param name="MinimumMelting">Shortest time until the element melts (s). IEC: minimum pre-arcing time.</param>
/// <param name="MaximumClearing">Longest time until the current is gone (s). IEC: maximum operating time.</param>
public sealed record CurvePoint(ElectricCurrent Current, Duration? MinimumMelting, Duration? MaximumClearing);

/// <summary>Pulses a device bears against the share of its melting I²t that each takes.</summary>
/// <param name="Starts">Number of pulses in life.</param>
/// <param name="Share">Share of the nominal melting I²t that a pulse may use.</param>
public sealed record PulseLifePoint(double Starts, double Share);

/// <summary>Standard families with gates for opening times.</summary>
public enum Characteristic
{
    /// <summary>UL 248-14 supplemental fuses.</summary>
    Ul248Part14,

    /// <summary>IEC 60127-2 sheet 2, quick acting F, low breaking capacity.</summary>
    Iec60127QuickActing,

    /// <summary>IEC 60127-2 sheet 3, time-lag T, low breaking capacity.</summary>
    Iec60127TimeLag,

    /// <summary>ISO 8820-3 blade fuses, types C and F.</summary>
    Iso8820Blade,

    /// <summary>IEC 60269 gG, general purpose.</summary>
    Iec60269gG,
}

/// <summary>Which overcurrents a fuse can break.</summary>
public enum BreakingRange
{
    /// <summary>All that melt it (IEC class g).</summary>
    Full,

    /// <summary>Only those above its minimum breaking current (IEC class a, back-up).</summary>
    Partial,
}

/// <summary>Flammability of a body by UL 94 / IEC 60695-11-10, from the best down.</summary>
public enum Flammability
{
    /// <summary>5VA.</summary>
    FiveVA,

    /// <summary>5VB.</summary>
    FiveVB,

    /// <summary>V-0.</summary>
    V0,

    /// <summary>V-1.</summary>
    V1,

    /// <summary>V-2.</summary>
    V2,

    /// <summary>HB.</summary>
    HB,

    /// <summary>A body of metal, glass or ceramic, which does not burn.</summary>
    NonCombustible,
}

/// <summary>How a part is joined to the circuit.</summary>
public enum Joint
{
    /// <summary>Soldered on laminate.</summary>
    Soldered,

    /// <summary>Bolted without locking.</summary>
    Bolted,

    /// <summary>Bolted with a locked nut or washer.</summary>
    BoltedLocked,

    /// <summary>Plugged with spring contacts.</summary>
    SpringContact,

    /// <summary>Held by a clip.</summary>
    Clip,

    /// <summary>Welded.</summary>
    Welded,

    /// <summary>Crimped.</summary>
    Crimped,
}
