using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.PulseLife;

/// <summary>A pulse life curve by powers of ten.</summary>
public static class P
{
    public static readonly ImmutableArray<PulseLifePoint> Life = [.. Enumerable.Range(2, 5).Select(power => new PulseLifePoint(Math.Pow(10, power), Math.Round(0.8 * Math.Pow(0.75, power - 2), 4)))];
    public static readonly double Share = Life.Last(point => point.Starts <= 30_000).Share;
    public static readonly Fuse Part = new() { PulseLife = Life };
    public static readonly bool Falling = Life.Zip(Life.Skip(1)).All(pair => pair.First.Share > pair.Second.Share);
}
