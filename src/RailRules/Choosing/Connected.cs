using System.Collections.Immutable;

namespace RailRules.Choosing;

/// <summary>Which rails of a board can feel a change on another: those that share a source, a return or a designator, directly or through others.</summary>
internal static class Connected
{
    internal static ImmutableArray<Rail> With(ImmutableArray<Rail> board, IEnumerable<Rail> rails)
    {
        var joints = new Dictionary<object, List<Rail>>();
        var jointsOf = new Dictionary<Rail, List<object>>();
        foreach (var rail in board)
        {
            var own = JointsOf(rail).Distinct().ToList();
            jointsOf[rail] = own;
            foreach (var joint in own)
            {
                if (!joints.TryGetValue(joint, out var joined))
                {
                    joints.Add(joint, joined = []);
                }

                joined.Add(rail);
            }
        }

        var reached = new HashSet<Rail>();
        var passed = new HashSet<object>();
        var pending = new Stack<Rail>(rails);
        while (pending.Count > 0)
        {
            var rail = pending.Pop();
            if (!jointsOf.TryGetValue(rail, out var own) || !reached.Add(rail))
            {
                continue;
            }

            foreach (var joint in own.Where(passed.Add))
            {
                joints[joint].ForEach(pending.Push);
            }
        }

        return [.. board.Where(reached.Contains)];
    }

    /// <summary>What a rail may share: itself as a source, all that feeds it (a converter with its input), its returns, its designators.</summary>
    private static IEnumerable<object> JointsOf(Rail rail)
    {
        yield return rail;
        foreach (var above in Upstream.Of(rail))
        {
            yield return above;
            for (var source = above; source is Converter { Input: { } input };)
            {
                yield return input;
                source = input;
            }
        }

        foreach (var back in Network.Items(rail.Feeds).Select(feed => feed?.Return).Append(rail.Return))
        {
            if (back is { IsMirrored: false, Elements.IsDefaultOrEmpty: false })
            {
                yield return new ByIdentity(back);
            }
        }

        foreach (var designator in Designators(rail))
        {
            yield return designator;
        }
    }

    private static IEnumerable<string> Designators(Rail rail)
    {
        var pending = new Stack<Element?>(Network.Items(rail.Path).Concat(Network.Items(rail.Feeds).SelectMany(feed => Network.Items(feed?.Path ?? []))));
        while (pending.Count > 0)
        {
            var part = pending.Pop();
            if (part?.Designator is { } designator)
            {
                yield return designator;
            }

            if (part is ParallelGroup group)
            {
                foreach (var inner in Network.Items(group.Branches).SelectMany(branch => Network.Items(branch)))
                {
                    pending.Push(inner);
                }
            }
        }

        foreach (var clamp in Network.Items(rail.Clamps))
        {
            if (clamp?.Designator is { } designator)
            {
                yield return designator;
            }
        }
    }

    private sealed class ByIdentity(object one)
    {
        private readonly object one = one;

        public override bool Equals(object? obj) => obj is ByIdentity other && ReferenceEquals(one, other.one);

        public override int GetHashCode() => System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(one);
    }
}
