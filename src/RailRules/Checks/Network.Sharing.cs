using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>The largest share that a branch of a parallel group can take.</content>
public sealed partial class Network
{
    /// <summary>
    /// The current of a branch (A) with its resistance at the least end of its bands and those of the others at the largest, between bounds where data are absent, and the
    /// resistances at the end that decides.
    /// </summary>
    internal (Range Current, ImmutableArray<MissingDatum> Missing, double Own, double Others) LargestShare(PartPlace place, ParallelGroup group, int branch, Range total)
    {
        var branches = Items(group.Branches);
        var stretches = new Stretch[branches.Length];
        for (var b = 0; b < branches.Length; b++)
        {
            stretches[b] = new Stretch(least: b == branch);
            var elements = Items(branches[b]);
            for (var i = 0; i < elements.Length; i++)
            {
                if (elements[i] is { } element)
                {
                    AddElement(stretches[b], place.Rail, element, Label(element, place.Rail, i));
                }
            }
        }

        var others = Enumerable.Range(0, branches.Length).Where(b => b != branch).Select(b => stretches[b]).ToList();
        var gaps = stretches.SelectMany(stretch => stretch.Gaps).ToList();
        if (Unworkable(group, place.Label, nameof(ParallelGroup.Branches)) is { } hidden)
        {
            return (total with { Low = 0 }, [hidden], 0, 0);
        }

        var most = others.Count > 0 && others.All(stretch => stretch.Unbounded) ? total.High : Shared(true, total.High);
        var least = stretches[branch].Unbounded ? 0 : Shared(false, total.Low);
        var chosen = gaps.Any(gap => gap.Unbounded) ? gaps.Where(gap => gap.Unbounded) : gaps;
        var current = double.IsInfinity(most) || double.IsNaN(most) ? total.High : most;
        var own = stretches[branch].At(false, current).Resistance;
        var conductance = others.Sum(stretch => 1 / Math.Max(stretch.At(true, Math.Max(0, total.High - current)).Resistance, OperatingPoint.LeastMeshResistance));
        return (new Range(gaps.Count == 0 && total.IsExact ? most : least, most), [.. chosen.Select(gap => gap.Datum)], own, 1 / conductance);

        double Shared(bool worst, double amperes)
        {
            if (double.IsInfinity(amperes) || amperes <= 0)
            {
                return amperes;
            }

            var parts = new (double Resistance, double Drop)[branches.Length];
            var currents = new double[branches.Length];
            for (var i = 0; i < currents.Length; i++)
            {
                currents[i] = amperes / currents.Length;
            }

            for (var round = 0; round < 8; round++)
            {
                for (var i = 0; i < parts.Length; i++)
                {
                    // The branch itself at the end of its bounds that gives it most, the others at the opposite end.
                    parts[i] = stretches[i].At(i == branch ? !worst : worst, currents[i]);
                    parts[i].Resistance = i != branch && worst && stretches[i].Unbounded ? double.MaxValue : parts[i].Resistance;
                }

                Sharing.Share(parts, amperes, currents);
            }

            return currents[branch];
        }
    }
}
