using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.LoadSteps;

/// <summary>A profile of load steps, its mean and its peak.</summary>
public static class P
{
    private static readonly (double Seconds, double Amperes)[] Profile = [(2, 5), (0.5, 22), (1.5, 8), (6, 0)];
    public static readonly double Mean = Profile.Sum(step => step.Seconds * step.Amperes) / Profile.Sum(step => step.Seconds);
    public static readonly double Rms = Math.Sqrt(Profile.Sum(step => step.Seconds * step.Amperes * step.Amperes) / Profile.Sum(step => step.Seconds));
    public static readonly double Peak = Profile.Max(step => step.Amperes);
    public static readonly ImmutableArray<Pulse> Pulses = [.. Profile.Where(step => step.Amperes > 10).Select(step => new Pulse { Current = step.Amperes.Amperes(), Width = step.Seconds.Seconds(), Period = Profile.Sum(s => s.Seconds).Seconds() })];
}
