using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A load at the end of a rail. Its steady demand is the sum of <see cref="Power"/>, <see cref="Current"/> and <see cref="Resistance"/>, those stated.
/// </summary>
public sealed record Load
{
    /// <summary>Makes a load.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member.</param>
    public Load([CallerMemberName] string? member = null) => Member = member;

    /// <summary>The name people see; null: its place on the rail.</summary>
    public string? Name { get; init; }

    /// <summary>Constant power at the load's terminals at its lowest efficiency (W): switching converters. Draws most at the lowest voltage.</summary>
    public Band<Power>? Power { get; init; }

    /// <summary>Constant current (A).</summary>
    public Band<ElectricCurrent>? Current { get; init; }

    /// <summary>Resistive load (Ω): heaters, lamps. Draws most at the highest voltage.</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Repeated currents on top of the steady demand.</summary>
    public ImmutableArray<Pulse> Pulses { get; init; } = [];

    /// <summary>Lowest voltage at its terminals at which it works (V); below it the load switches off.</summary>
    public ElectricPotential? MinVoltage { get; init; }

    /// <summary>Highest voltage at its terminals (V). Data sheet: "absolute maximum input voltage".</summary>
    public ElectricPotential? MaxVoltage { get; init; }

    /// <summary>Highest voltage it withstands for less than 1 ms (V).</summary>
    public ElectricPotential? SurgeWithstand { get; init; }

    /// <summary>Capacitance at its input (F).</summary>
    public Band<ElectricCapacitance>? InputCapacitance { get; init; }

    /// <summary>Series resistance of the input capacitance (Ω).</summary>
    public Band<ElectricResistance>? InputCapacitorEsr { get; init; }

    /// <summary>Series inductance of the input capacitance (H).</summary>
    public Band<ElectricInductance>? InputCapacitorEsl { get; init; }

    /// <summary>Times the load is switched on in its life, tests and brown-outs included.</summary>
    public double? StartsInLife { get; init; }

    /// <summary>When the load begins to draw its current.</summary>
    public EnablesAt? EnablesAt { get; init; }

    /// <summary>Highest current the load can draw when it is overloaded, by its own limit (A).</summary>
    public ElectricCurrent? OverloadLimit { get; init; }

    /// <summary>How long it works without input (s).</summary>
    public Duration? HoldUp { get; init; }

    /// <summary>Whether it can drive current back into the rail.</summary>
    public bool? Regenerates { get; init; }

    /// <summary>Current it can drive back (A).</summary>
    public ElectricCurrent? RegeneratedCurrent { get; init; }

    /// <summary>Whether the load must run with the fewest feeds alive. Null counts as true.</summary>
    public bool? Critical { get; init; }

    /// <summary>Where the data come from.</summary>
    public string? Citation { get; init; }

    internal string? Member { get; }
}

/// <summary>When a load begins to draw its current.</summary>
public sealed record EnablesAt
{
    private EnablesAt()
    {
    }

    /// <summary>As soon as there is any voltage.</summary>
    public static EnablesAt Zero { get; } = new();

    /// <summary>Only after the rail has reported that it is up.</summary>
    public static EnablesAt PowerGood { get; } = new() { AfterPowerGood = true };

    /// <summary>The voltage at which it begins (V); null: from zero or after power-good.</summary>
    public ElectricPotential? Threshold { get; private init; }

    /// <summary>Whether it waits for the rail's power-good signal.</summary>
    public bool AfterPowerGood { get; private init; }

    /// <summary>From the given voltage on (V).</summary>
    public static EnablesAt Voltage(ElectricPotential threshold) => new() { Threshold = threshold };
}

/// <summary>A repeated current of a load.</summary>
public sealed record Pulse
{
    /// <summary>Peak current (A).</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>Width (s): the whole of a rectangle, triangle or half sine; the time constant of an exponential.</summary>
    public Duration? Width { get; init; }

    /// <summary>Time from pulse to pulse (s).</summary>
    public Duration? Period { get; init; }

    /// <summary>Pulses in a burst; null: an endless train when <see cref="Period"/> is stated.</summary>
    public int? Count { get; init; }

    /// <summary>Pulses (or bursts) in the life of the equipment.</summary>
    public double? TimesInLife { get; init; }

    /// <summary>Shape; I²t of a rectangle is I²·t, of a triangle a third, of a half sine a half, of an exponential I²·τ/2.</summary>
    public PulseShape Shape { get; init; }
}

/// <summary>Shapes of a current pulse.</summary>
public enum PulseShape
{
    /// <summary>Constant for its width.</summary>
    Rectangle,

    /// <summary>Rising and falling on straight lines.</summary>
    Triangle,

    /// <summary>Half a sine wave.</summary>
    HalfSine,

    /// <summary>Falling exponentially; the width is the time constant.</summary>
    Exponential,
}
