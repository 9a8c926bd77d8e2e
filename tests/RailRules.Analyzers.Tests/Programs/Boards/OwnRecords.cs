using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.OwnRecords;

/// <summary>A team's own record from which rails are made.</summary>
public static class P
{
    private static readonly Module[] Modules = [new("cpu", 350), new("disk", 45) { Critical = false }, new("fan", 30)];
    public static readonly ImmutableArray<Rail> Rails = [.. Modules.OrderByDescending(m => m.Watts).Select(m => m.ToRail())];
    public static readonly double Total = Modules.Where(m => m.Critical).Sum(m => m.Watts);
    public static readonly string Text = string.Join("; ", Modules.Select(m => m.ToString()));
}

public sealed record Module(string Name, double Watts)
{
    public bool Critical { get; init; } = true;

    public Rail ToRail() => new() { Name = Name, Loads = [new() { Name = Name, Power = Watts.Watts(), Critical = Critical }] };
}
