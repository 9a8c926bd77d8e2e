using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.AbstractModules;

/// <summary>A hierarchy of modules, each making its rail.</summary>
public static class P
{
    private static readonly Module[] Modules = [new FanTray(3), new Blade(450), new Blade(300) { Name = "slow blade" }];
    public static readonly ImmutableArray<Rail> Rails = [.. Modules.Select(module => module.Rail())];
    public static readonly double Watts = Modules.Sum(module => module.Watts);
}

public abstract record Module
{
    public string Name { get; init; } = "module";

    public abstract double Watts { get; }

    protected virtual double Margin => 1.25;

    public Rail Rail() => new() { Name = Name, Path = [new Fuse { RatedCurrent = Math.Round(Watts / 43 * Margin, 2).Amperes() }] };
}

public sealed record FanTray(int Fans) : Module
{
    public override double Watts => Fans * 12.5;

    protected override double Margin => base.Margin * 2;
}

public sealed record Blade(double Power) : Module
{
    public override double Watts => Power;
}
