using System.Runtime.CompilerServices;

namespace RailRules;

/// <content>Feed states: which feeds are alive.</content>
public sealed partial class Network
{
    /// <summary>Most feeds that share rails of which every combination is tried; most states of a board part whose groups of feeds are combined in full.</summary>
    private const int MostFeeds = 10;

    private const int MostStates = 32;

    /// <summary>What feed it is for the loss of feeds: the source, and which of the rail's feeds from that source.</summary>
    private readonly record struct FeedKey(object Source, int Occurrence)
    {
        public bool Equals(FeedKey other) => ReferenceEquals(Source, other.Source) && Occurrence == other.Occurrence;

        public override int GetHashCode() => RuntimeHelpers.GetHashCode(Source) ^ Occurrence;
    }

    /// <summary>A state of the feeds: those that are lost, and its name.</summary>
    private sealed class FeedState
    {
        internal HashSet<FeedKey> Lost { get; } = [];

        internal string Name { get; set; } = "";
    }

    private List<FeedKey> KeysOf(int rail)
    {
        var result = new List<FeedKey>();
        foreach (var supplying in suppliers[rail])
        {
            var source = supplying.From ?? supplying.Feed ?? (object)Rails[rail];
            result.Add(new FeedKey(source, result.Count(key => ReferenceEquals(key.Source, source))));
        }

        return result;
    }

    private int FeedsNeeded(int rail) => Math.Min(suppliers[rail].Length, Math.Max(1, Rails[rail].FeedsNeeded ?? 1));

    /// <summary>All feeds on, then each set of feeds lost that leaves those needed and no more, of all rails together. Feeds from one source are lost together.</summary>
    private (List<FeedState> States, bool Partial) StatesOf(List<int> rails)
    {
        var all = new FeedState { Name = "all feeds on" };
        var redundant = rails.Where(rail => suppliers[rail].Length > 1).ToList();
        if (redundant.Count == 0)
        {
            all.Name = "";
            return ([all], false);
        }

        var keys = redundant.ToDictionary(rail => rail, KeysOf);
        var partial = false;
        var groups = new List<List<HashSet<FeedKey>>>();
        foreach (var group in Joined(redundant, keys))
        {
            groups.Add(LossesOf(group, keys, ref partial));
        }

        var states = new List<FeedState> { all };
        var product = groups.Aggregate(1L, (count, losses) => Math.Min(int.MaxValue, count * losses.Count));
        var number = product <= MostStates ? product : groups.Max(losses => losses.Count);
        partial |= product > MostStates;
        for (long i = 0; i < number; i++)
        {
            var state = new FeedState();
            var rest = i;
            foreach (var losses in groups)
            {
                var pick = product <= MostStates ? rest % losses.Count : i % losses.Count;
                rest /= losses.Count;
                state.Lost.UnionWith(losses[(int)pick]);
            }

            state.Name = state.Lost.Count == 0
                ? all.Name
                : "without " + string.Join(", ", state.Lost.Select(key => key.Source is Source source ? $"'{Label(source)}'" : "a feed").Distinct().OrderBy(name => name, StringComparer.Ordinal).Take(4))
                    + (state.Lost.Count > 4 ? ", ..." : "");
            states.Add(state);
        }

        return (states, partial);
    }

    /// <summary>Redundant rails in groups that share feeds.</summary>
    private static IEnumerable<List<int>> Joined(List<int> rails, Dictionary<int, List<FeedKey>> keys)
    {
        var sets = new DisjointSets(rails.Count);
        var first = new Dictionary<FeedKey, int>();
        for (var i = 0; i < rails.Count; i++)
        {
            foreach (var key in keys[rails[i]])
            {
                if (first.TryGetValue(key, out var other))
                {
                    sets.Join(i, other);
                }
                else
                {
                    first.Add(key, i);
                }
            }
        }

        return Enumerable.Range(0, rails.Count).GroupBy(sets.Find).Select(group => group.Select(i => rails[i]).ToList());
    }

    private List<HashSet<FeedKey>> LossesOf(List<int> rails, Dictionary<int, List<FeedKey>> keys, ref bool partial)
    {
        rails.Sort();
        var all = rails.SelectMany(rail => keys[rail]).Distinct().ToList();
        var result = new List<HashSet<FeedKey>>();
        if (all.Count <= MostFeeds)
        {
            for (var mask = 0; mask < 1 << all.Count; mask++)
            {
                bool Alive(FeedKey key, int bits) => (bits & (1 << all.IndexOf(key))) != 0;
                bool Enough(int bits) => rails.All(rail => keys[rail].Count(key => Alive(key, bits)) >= FeedsNeeded(rail));
                if (Enough(mask) && !Enumerable.Range(0, all.Count).Any(bit => (mask & (1 << bit)) != 0 && Enough(mask & ~(1 << bit))))
                {
                    result.Add([.. all.Where(key => !Alive(key, mask))]);
                }
            }

            return result;
        }

        partial = true;
        foreach (var kept in all)
        {
            var alive = new HashSet<FeedKey>(all);
            var count = rails.ToDictionary(rail => rail, rail => keys[rail].Count);
            foreach (var key in all.Where(key => !key.Equals(kept)))
            {
                var users = rails.Where(rail => keys[rail].Contains(key)).ToList();
                if (users.All(rail => count[rail] > FeedsNeeded(rail)))
                {
                    alive.Remove(key);
                    users.ForEach(rail => count[rail]--);
                }
            }

            result.Add([.. all.Where(key => !alive.Contains(key))]);
        }

        return result;
    }

    private sealed class DisjointSets(int count)
    {
        private readonly int[] parent = [.. Enumerable.Range(0, count)];

        internal int Find(int i)
        {
            while (parent[i] != i)
            {
                i = parent[i] = parent[parent[i]];
            }

            return i;
        }

        internal void Join(int a, int b)
        {
            var (low, high) = (Find(a), Find(b));
            parent[Math.Max(low, high)] = Math.Min(low, high);
        }
    }
}
