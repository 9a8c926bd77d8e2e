using System.Collections.Immutable;

namespace Programs.Collections.BreadthFirst;

/// <summary>A search over a graph in dictionaries.</summary>
public static class P
{
    private static readonly Dictionary<string, string[]> Edges = new()
    {
        ["Plant"] = ["Bus A", "Bus B"],
        ["Bus A"] = ["Sled 1", "Sled 2"],
        ["Bus B"] = ["Sled 3"],
        ["Sled 2"] = ["Fan"],
    };
    public static readonly ImmutableArray<string> Order = [.. Walk("Plant")];
    public static readonly Dictionary<string, int> Depths = Depth("Plant");

    private static List<string> Walk(string start)
    {
        var seen = new HashSet<string> { start };
        var order = new List<string>();
        var queue = new Queue<string>([start]);
        while (queue.Count > 0)
        {
            var at = queue.Dequeue();
            order.Add(at);
            foreach (var next in Edges.GetValueOrDefault(at, []))
            {
                if (seen.Add(next))
                    queue.Enqueue(next);
            }
        }

        return order;
    }

    private static Dictionary<string, int> Depth(string start)
    {
        var depths = new Dictionary<string, int>();
        void Visit(string at, int depth)
        {
            depths[at] = depth;
            if (Edges.TryGetValue(at, out var below))
            {
                foreach (var next in below)
                    Visit(next, depth + 1);
            }
        }

        Visit(start, 0);
        return depths;
    }
}
