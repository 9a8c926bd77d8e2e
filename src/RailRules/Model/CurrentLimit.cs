using UnitsNet;

namespace RailRules;

/// <summary>How a source limits its own output current. Data sheet: "output current limit", "overcurrent protection".</summary>
public sealed record CurrentLimit
{
    /// <summary>The level at which the source limits (A).</summary>
    public Band<ElectricCurrent>? Level { get; init; }

    /// <summary>Time until the limit acts (s), during which resistance and inductance alone limit.</summary>
    public Band<Duration>? Response { get; init; }

    /// <summary>What the source does once it limits.</summary>
    public CurrentLimitStyle? Style { get; init; }

    /// <summary>Highest current before the limit acts (A), where the data sheet bounds it.</summary>
    public ElectricCurrent? PeakBeforeLimit { get; init; }

    /// <summary>Current into a short circuit of a foldback characteristic (A).</summary>
    public Band<ElectricCurrent>? FoldbackCurrent { get; init; }

    /// <summary>Hiccup: how long it tries (s).</summary>
    public Duration? OnTime { get; init; }

    /// <summary>Hiccup: how long it rests (s).</summary>
    public Duration? OffTime { get; init; }

    /// <summary>Latch-off: how long it limits before it switches off (s).</summary>
    public Band<Duration>? TripTime { get; init; }

    /// <summary>What enforces the limit. A limit made by firmware or battery management is not credited unless the policy says so. Null: hardware is not shown.</summary>
    public LimitedBy? LimitedBy { get; init; }
}

/// <summary>What a source does once it limits its current.</summary>
public enum CurrentLimitStyle
{
    /// <summary>It holds the level for ever.</summary>
    ConstantCurrent,

    /// <summary>It lowers the current as the voltage falls.</summary>
    Foldback,

    /// <summary>It tries and rests in turn.</summary>
    Hiccup,

    /// <summary>It switches off until it is reset.</summary>
    LatchOff,
}

/// <summary>What enforces a current limit.</summary>
public enum LimitedBy
{
    /// <summary>A circuit that works without software.</summary>
    Hardware,

    /// <summary>Software: firmware of a converter, a battery management system.</summary>
    Firmware,
}

/// <summary>A fault current that is known from elsewhere. IEC: prospective short-circuit current; North America: available fault current.</summary>
public sealed record ProspectiveFault
{
    /// <summary>The settled prospective current at the terminals (A).</summary>
    public Band<ElectricCurrent>? Current { get; init; }

    /// <summary>Its time constant L/R (s).</summary>
    public Duration? TimeConstant { get; init; }
}

/// <summary>Which pole of a source is earthed (grounded).</summary>
public enum Earthing
{
    /// <summary>Neither: the source floats.</summary>
    None,

    /// <summary>The negative pole.</summary>
    Negative,

    /// <summary>The positive pole, as in −48 V telecom plants.</summary>
    Positive,

    /// <summary>The middle, through a resistance or directly.</summary>
    Middle,
}
