using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.DefaultsByInheritance;

/// <summary>Part families by inheritance of an own base class.</summary>
public static class P
{
    public static readonly Fuse Fast = new FastFamily().Make(5);
    public static readonly Fuse Slow = new SlowFamily().Make(5);
    public static readonly ImmutableArray<Fuse> Both = [.. new Family[] { new FastFamily(), new SlowFamily() }.Select(family => family.Make(8))];
}

public abstract class Family
{
    protected abstract double Melting { get; }

    protected virtual int Volts => 125;

    public Fuse Make(double amperes) => new() { RatedCurrent = amperes.Amperes(), DcVoltageRating = Volts.Volts(), MeltingIntegral = (Melting * amperes * amperes).AmpereSquaredSeconds() };
}

public sealed class FastFamily : Family
{
    protected override double Melting => 0.1;
}

public sealed class SlowFamily : Family
{
    protected override double Melting => 2.5;

    protected override int Volts => base.Volts / 2;
}
