using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>Heat of devices, and which fuse stands in which holder.</content>
public sealed partial class Network
{
    /// <summary>
    /// Heat (W) of a fuse that carries a current: by its largest drop at rated current. A cold resistance gives the least it can be; the most is that of a drop of
    /// <see cref="CompactDrop"/> at rated current.
    /// </summary>
    internal static (Range Heat, ImmutableArray<MissingDatum> Missing) HeatOf(PartPlace place, Fuse fuse, Range current)
    {
        var rated = fuse.RatedCurrent?.Amperes;
        if (rated is > 0 and var amperes && fuse.VoltageDrop is { } drop)
        {
            var volts = Finite(drop.Max.Volts);
            return (new Range(DeviceHeat.Dissipation(volts, amperes, current.Low), DeviceHeat.Dissipation(volts, amperes, current.High)), []);
        }

        var cold = Finite(fuse.ColdResistance?.Max.Ohms ?? 0);
        var most = rated is > 0 and var known ? Math.Max(cold, CompactDrop / known) : double.PositiveInfinity;
        return (
            new Range(cold * current.Low * current.Low, current.High > 0 ? most * current.High * current.High : 0),
            [new MissingDatum(new DatumPlace(fuse, rated is > 0 ? nameof(Fuse.VoltageDrop) : nameof(Fuse.RatedCurrent)), place.Label)]);
    }

    /// <summary>
    /// The holders of a rail's paths and branches, each with the fuse that stands in it: the one beside it; where there is one on either side and neither belongs to another
    /// holder, both, of which one does.
    /// </summary>
    internal IEnumerable<(PartPlace Holder, ImmutableArray<PartPlace> Fuses)> HoldersOf(Rail rail)
    {
        var series = new List<List<PartPlace>>();
        foreach (var place in Parts(rail))
        {
            if (series.FirstOrDefault(one => InOneSeries(one[0], place)) is { } known)
            {
                known.Add(place);
            }
            else
            {
                series.Add([place]);
            }
        }

        foreach (var one in series)
        {
            var holders = Enumerable.Range(0, one.Count).Where(i => one[i].Part is FuseHolder).ToList();
            var taken = new HashSet<int>();
            var found = new Dictionary<int, List<int>>();
            while (holders.Count > found.Count)
            {
                // First those that have no choice; then what is left, one by one.
                var open = holders.Where(holder => !found.ContainsKey(holder)).Select(holder => (Holder: holder, Beside: Beside(one, holder).Where(i => !taken.Contains(i)).ToList())).ToList();
                var (next, fuses) = open.FirstOrDefault(pair => pair.Beside.Count <= 1) is { Beside: not null } sure ? sure : open[0];
                found.Add(next, fuses);
                taken.UnionWith(fuses);
            }

            foreach (var holder in holders)
            {
                yield return (one[holder], [.. found[holder].Select(i => one[i])]);
            }
        }

        static IEnumerable<int> Beside(List<PartPlace> parts, int holder) =>
            ((int[])[holder - 1, holder + 1]).Where(i => i >= 0 && i < parts.Count && parts[i].Part is Fuse);
    }

    private static bool InOneSeries(PartPlace a, PartPlace b) =>
        ReferenceEquals(a.Place.Owner, b.Place.Owner) && a.Place.Datum == b.Place.Datum && a.Branches.Length == b.Branches.Length
        && (a.Branches.IsEmpty || a.Place.Index == b.Place.Index)
        && a.Branches.Zip(b.Branches, (x, y) => ReferenceEquals(x.Group, y.Group) && x.Branch == y.Branch).All(same => same);
}
