using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Parallel;

/// <summary>Branches of a parallel group.</summary>
public static class P
{
    private static readonly Fuse One = new() { RatedCurrent = 40.Amperes(), ColdResistance = Band.Of(0.9.Milliohms(), 1.1.Milliohms()) };
    public static readonly ParallelGroup Pair = new() { Branches = [[One.As("F1")], [One.As("F2"), new Trace { Resistance = 0.1.Milliohms() }]] };
    public static readonly ParallelGroup Many = new() { Branches = [.. Enumerable.Range(1, 3).Select(i => ImmutableArray.Create<Element>(One.As($"F{i}")))] };
    public static readonly double Share = Parallel(1.0, 1.1, 1.2);
    public static readonly int Branches = Pair.Branches.Sum(branch => branch.Length);

    private static double Parallel(params double[] milliohms) => 1 / milliohms.Sum(r => 1 / r);
}
