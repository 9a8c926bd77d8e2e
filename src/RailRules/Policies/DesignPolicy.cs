using System.Collections.Immutable;
using UnitsNet;

namespace RailRules;

/// <summary>
/// The margins that rules use. The default policy holds the limits of data sheets and standards; house margins go on top.
/// A policy stands on a rail or a device and is inherited along <see cref="Rail.From"/>.
/// </summary>
public sealed record DesignPolicy
{
    /// <summary>The default policy.</summary>
    public static DesignPolicy Default { get; } = new();

    /// <summary>What the policy is called in worksheets.</summary>
    public string Name { get; init; } = "default";

    /// <summary>Where the margins come from; null: the defaults of this library.</summary>
    public string? Citation { get; init; }

    /// <summary>
    /// Share of its rated current that a fuse may carry for ever (0201). Null: by its rating basis, 1.00 where it carries its rating, 0.75 where it
    /// carries three quarters of it. A stated factor replaces that of the basis; the two never multiply. Common practice, no source.
    /// </summary>
    public double? FuseContinuous { get; init; }

    /// <summary>Share of its rated current that a circuit breaker without a rating basis may carry for ever (0201). NFPA 70, 210.20(A) and 215.3 (from memory).</summary>
    public double BreakerContinuous { get; init; } = 0.80;

    /// <summary>Share of its lowest trip level that an electronic fuse may carry (0201).</summary>
    public double ElectronicTrip { get; init; } = 1.00;

    /// <summary>Lowest plausible derating factor, used where no curve is stated (0201, 0202). Common practice, no source.</summary>
    public double UnknownDeratingFloor { get; init; } = 0.50;

    /// <summary>Whether derating factors above 1 in the cold are credited (0201).</summary>
    public bool CreditCold { get; init; }

    /// <summary>Whether current above 2000 m is reduced by 1 − (h − 2000 m)/20 km where the part states no altitude derating (0201, 0202). Common practice, no source.</summary>
    public bool AltitudeRule { get; init; } = true;

    /// <summary>Share of a voltage rating that may be used (0101).</summary>
    public double VoltageFraction { get; init; } = 1.00;

    /// <summary>Longest conductor between a source, or a tap from a larger conductor, and the first device (m) (0307). Common practice, no source.</summary>
    public Length UnprotectedLength { get; init; } = Length.FromMillimeters(150);

    /// <summary>Whether current limits made by firmware or battery management are credited (faults).</summary>
    public bool CreditFirmwareLimits { get; init; }

    /// <summary>Share of a contact's rating that may be used for ever (0204, 0307).</summary>
    public double ConnectorContinuous { get; init; } = 1.00;

    /// <summary>
    /// Multiple of what a conductor or contact carries for ever that it bears for the conventional time (0204, 0303, 0308). IEC 60364-4-43, 433.1: 1.45 (from memory).
    /// </summary>
    public double OverloadFactor { get; init; } = 1.45;

    /// <summary>Highest steady voltage (V) of a source without earthed pole up to which a device in one pole is enough (0105). Common practice, no source.</summary>
    public ElectricPotential ProtectBothPolesAbove { get; init; } = ElectricPotential.FromVolts(60);

    /// <summary>Share of its hold current that a resettable fuse may carry (0404). No further factor is due: the hold current is carried for ever.</summary>
    public double ResettableHold { get; init; } = 1.00;

    /// <summary>Multiple of the rating needed from which a device counts as far overrated (0208). Common practice, no source.</summary>
    public double OverratingRatio { get; init; } = 4;

    /// <summary>Allowed rise of a trace above the air (K) (0204, 0307, 0503). Common practice, no source.</summary>
    public TemperatureDelta TraceRise { get; init; } = TemperatureDelta.FromKelvins(20);

    /// <summary>Share of an interrupting rating that may be used (0301).</summary>
    public double InterruptingFraction { get; init; } = 1.00;

    /// <summary>Time constant (s) up to which ratings and clearing data that state none are credited, and that is assumed of sources and conductors known by their resistance alone (0306). Common practice, no source.</summary>
    public Duration AssumedTimeConstant { get; init; } = Duration.FromMilliseconds(1);

    /// <summary>Resistance of the fault (Ω) where the smallest current counts (0302, 0303).</summary>
    public ElectricResistance FaultResistance { get; init; } = ElectricResistance.Zero;

    /// <summary>Arc voltage of the fault (V) where the smallest current counts (0302, 0303).</summary>
    public ElectricPotential ArcVoltage { get; init; } = ElectricPotential.Zero;

    /// <summary>Longest time (s) in which a fuse or circuit breaker must have opened on the smallest fault (0303). IEC 60364-4-41, 411.3.2.3 (from memory): 5 s for distribution circuits.</summary>
    public Duration OpeningTime { get; init; } = Duration.FromSeconds(5);

    /// <summary>Time (s) for which a conductor bears an overload that does not heat it above its short-time limit, and in which devices open for certain (0303, 0308). IEC 60269-1, Table 2, up to 63 A (from memory): 1 h.</summary>
    public Duration ConventionalTime { get; init; } = Duration.FromHours(1);

    /// <summary>Longest time (s) for which melting counts as adiabatic, so that I²t decides (0303, 0304, 0305, 0308, 0401). Common practice, no source.</summary>
    public Duration AdiabaticLimit { get; init; } = Duration.FromMilliseconds(10);

    /// <summary>Longest time (s) for which the heating of a conductor counts as adiabatic (0304, 0308). IEC 60364-4-43, 434.5.2 (from memory): 5 s.</summary>
    public Duration WithstandLimit { get; init; } = Duration.FromSeconds(5);

    /// <summary>Share of a diode's or switch's surge I²t that may be let through (0304). MIL-DTL-917F, 3.13.2.1: 10 % below.</summary>
    public double SemiconductorShare { get; init; } = 0.90;

    /// <summary>Whether electronic fuses count as shorted, as after their usual failure (0308).</summary>
    public bool SingleFault { get; init; }

    /// <summary>Power (W) that may flow into a fault for ever where nothing else is harmed; null: no limit (0302).</summary>
    public Power? PersistentFaultPower { get; init; }

    /// <summary>
    /// Share of the nominal melting I²t that each of N pulses may use (0401): straight lines on log10 N, the first share below the first point, nothing said beyond the last. Common practice, no source.
    /// </summary>
    public ImmutableArray<PulseLifePoint> PulseShare { get; init; } = [new(1e2, 0.48), new(1e3, 0.38), new(1e4, 0.29), new(1e5, 0.22)];

    /// <summary>Whether all capacitors behind a device are charged at once (0401); else each alone.</summary>
    public bool StartsCoincide { get; init; } = true;

    /// <summary>
    /// How many times the computed time to bring up a load the start timer must last (0402). 1 is the limit itself; 1.3 to 2 is common practice for a house margin, no source.
    /// </summary>
    public double StartTimeFactor { get; init; } = 1.00;

    /// <summary>What the current of a guaranteed safe operating area is divided by (0403).</summary>
    public double SoaFactor { get; init; } = 1.00;

    /// <summary>What the current of a typical safe operating area is divided by (0403). Common practice, no source.</summary>
    public double SoaFactorTypical { get; init; } = 1.30;

    /// <summary>Share of a stand-off voltage that may be used (0104).</summary>
    public double StandOffFraction { get; init; } = 1.00;

    /// <summary>Worst flammability class of a body where more than <see cref="FlammabilityFrom"/> is available (0601). Common practice, no source.</summary>
    public Flammability MinimumFlammability { get; init; } = Flammability.V1;

    /// <summary>Power at a place from which <see cref="MinimumFlammability"/> is asked for (W) (0601). IEC 62368-1, limit of power source class PS1 (from memory).</summary>
    public Power FlammabilityFrom { get; init; } = Power.FromWatts(15);

    /// <summary>Qualifications that count as others, e.g. a stricter grade for a lower one (0602). None by default: only the exact name matches.</summary>
    public ImmutableArray<QualificationCover> QualificationCovers { get; init; } = [];

    /// <summary>
    /// What each kind of joint bears (0603): clip 10 m/s² r.m.s., spring contact 20, bolted without locking 20, with locking 100, soldered 50 and, for bodies
    /// over 6 mm, 10 thermal cycles a day. Starting values, common practice, no source.
    /// </summary>
    public ImmutableArray<JointLimit> JointLimits { get; init; } =
    [
        new() { Joint = Joint.Clip, Vibration = Acceleration.FromMetersPerSecondSquared(10) },
        new() { Joint = Joint.SpringContact, Vibration = Acceleration.FromMetersPerSecondSquared(20) },
        new() { Joint = Joint.Bolted, Vibration = Acceleration.FromMetersPerSecondSquared(20) },
        new() { Joint = Joint.BoltedLocked, Vibration = Acceleration.FromMetersPerSecondSquared(100) },
        new() { Joint = Joint.Soldered, Vibration = Acceleration.FromMetersPerSecondSquared(50), ThermalCyclesPerDay = 10, CyclesFromLength = Length.FromMillimeters(6) },
    ];
}

/// <summary>A qualification that counts as another.</summary>
/// <param name="Qualification">What a part has, by exact name.</param>
/// <param name="Covers">What it counts as, by exact name.</param>
public sealed record QualificationCover(string Qualification, string Covers);

/// <summary>What a kind of joint bears; a limit that is null is none.</summary>
public sealed record JointLimit
{
    /// <summary>The kind of joint.</summary>
    public Joint Joint { get; init; }

    /// <summary>Vibration, root mean square (m/s²).</summary>
    public Acceleration? Vibration { get; init; }

    /// <summary>Thermal cycles a day.</summary>
    public double? ThermalCyclesPerDay { get; init; }

    /// <summary>Longest side of the body from which <see cref="ThermalCyclesPerDay"/> holds (m); null: for every body.</summary>
    public Length? CyclesFromLength { get; init; }
}
