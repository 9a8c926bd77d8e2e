using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <content>
/// The order in which types get their static values. C# gives a type all its values when one of them is first touched, in a program that is not known here: so values
/// may stand only where they are the same whichever type is touched first. Types whose initialisers use each other's statics are looked at together.
/// </content>
internal sealed partial class Interpreter
{
    /// <summary>Types whose initialisers, and those of all types that they touch, are evaluated and found to be in order.</summary>
    private readonly HashSet<INamedTypeSymbol> settled = new(SymbolEqualityComparer.Default);

    /// <summary>Reads of a member by another one that could come before the value does.</summary>
    private readonly HashSet<(ISymbol Reader, ISymbol Read)> early = new(ReadComparer.Instance);

    /// <summary>Types one of whose initialisers throws: in the program nothing of them can be read.</summary>
    private readonly Dictionary<INamedTypeSymbol, ISymbol> throwing = new(SymbolEqualityComparer.Default);

    /// <summary>Evaluates all initialisers of the types that a member touches and looks at their order. False where results had to be given up, so that all begins anew.</summary>
    private bool Settle(MemberResult result)
    {
        var found = new Dictionary<INamedTypeSymbol, List<MemberResult>>(SymbolEqualityComparer.Default);
        var open = new Queue<INamedTypeSymbol>();
        if (HasInitialiser(result.Member))
        {
            open.Enqueue(result.Member.ContainingType);
        }

        Enqueue(result, open);
        while (open.Count > 0)
        {
            var type = open.Dequeue();
            if (settled.Contains(type) || found.ContainsKey(type))
            {
                continue;
            }

            var members = new List<MemberResult>();
            found[type] = members;
            foreach (var member in type.GetMembers())
            {
                if (member.IsStatic && HasInitialiser(member))
                {
                    var sibling = Evaluated(member is IFieldSymbol { AssociatedSymbol: IPropertySymbol behind } ? behind : member);
                    members.Add(sibling);
                    Enqueue(sibling, open);
                }
            }
        }

        var before = early.Count + throwing.Count;
        foreach (var type in found)
        {
            foreach (var member in type.Value)
            {
                if (member.IsUnknown && member.Problems.Any(problem => problem.Kind == ProblemKind.Throws) && !throwing.ContainsKey(type.Key))
                {
                    throwing[type.Key] = member.Member;
                }
            }
        }

        foreach (var cycle in Cycles(found))
        {
            LookForEarlyReads(cycle, found);
        }

        if (early.Count + throwing.Count > before)
        {
            GiveUp(found.Keys);
            return false;
        }

        settled.UnionWith(found.Keys);
        return true;
    }

    private void Enqueue(MemberResult result, Queue<INamedTypeSymbol> open)
    {
        foreach (var read in result.Reads)
        {
            if (types.IsSource(read))
            {
                open.Enqueue(read.ContainingType);
            }
        }
    }

    private bool HasInitialiser(ISymbol member) => member switch
    {
        IFieldSymbol { IsConst: false, AssociatedSymbol: null } => bodies.Initialiser(member.OriginalDefinition) is not null,
        IPropertySymbol => bodies.Initialiser(member.OriginalDefinition) is not null,
        _ => false,
    };

    /// <summary>What another type reads of this one must stand above all that leads from this one to the others of the cycle.</summary>
    private void LookForEarlyReads(HashSet<INamedTypeSymbol> cycle, Dictionary<INamedTypeSymbol, List<MemberResult>> found)
    {
        foreach (var type in cycle)
        {
            foreach (var reader in found[type])
            {
                foreach (var read in reader.Reads)
                {
                    if (!SymbolEqualityComparer.Default.Equals(read.ContainingType, type) && cycle.Contains(read.ContainingType) && HasInitialiser(read)
                        && found[read.ContainingType].Exists(way => LeadsOut(way, cycle) && !IsAbove(read, way.Member)))
                    {
                        early.Add((reader.Member, read));
                    }
                }
            }
        }
    }

    private static bool LeadsOut(MemberResult member, HashSet<INamedTypeSymbol> cycle) =>
        member.Reads.Any(read => !SymbolEqualityComparer.Default.Equals(read.ContainingType, member.Member.ContainingType) && cycle.Contains(read.ContainingType));

    private bool IsAbove(ISymbol member, ISymbol other) =>
        bodies.Syntax(member) is { } first && bodies.Syntax(other) is { } second && first.SyntaxTree == second.SyntaxTree && first.SpanStart < second.SpanStart;

    /// <summary>Gives up the results of these types and all that came of them.</summary>
    private void GiveUp(IEnumerable<INamedTypeSymbol> affected)
    {
        var gone = new HashSet<INamedTypeSymbol>(affected, SymbolEqualityComparer.Default);
        var dropped = new HashSet<ISymbol>(SymbolEqualityComparer.Default);
        bool more;
        do
        {
            more = false;
            foreach (var entry in results)
            {
                if (!dropped.Contains(entry.Key) && (gone.Contains(entry.Key.ContainingType) || entry.Value.Reads.Any(dropped.Contains)))
                {
                    more |= dropped.Add(entry.Key);
                }
            }
        }
        while (more);

        foreach (var member in dropped)
        {
            results.Remove(member);
        }
    }

    /// <summary>Sets of at least two types each of which leads to the others (strongly connected components, by Tarjan's algorithm without recursion).</summary>
    private static List<HashSet<INamedTypeSymbol>> Cycles(Dictionary<INamedTypeSymbol, List<MemberResult>> found)
    {
        var edges = found.ToDictionary<KeyValuePair<INamedTypeSymbol, List<MemberResult>>, INamedTypeSymbol, List<INamedTypeSymbol>>(
            type => type.Key,
            type => [.. type.Value.SelectMany(member => member.Reads).Select(read => read.ContainingType).Where(found.ContainsKey).Distinct<INamedTypeSymbol>(SymbolEqualityComparer.Default)],
            SymbolEqualityComparer.Default);
        var index = new Dictionary<INamedTypeSymbol, int>(SymbolEqualityComparer.Default);
        var low = new Dictionary<INamedTypeSymbol, int>(SymbolEqualityComparer.Default);
        var held = new HashSet<INamedTypeSymbol>(SymbolEqualityComparer.Default);
        var stack = new Stack<INamedTypeSymbol>();
        var cycles = new List<HashSet<INamedTypeSymbol>>();
        foreach (var root in edges.Keys)
        {
            if (index.ContainsKey(root))
            {
                continue;
            }

            var work = new Stack<(INamedTypeSymbol Type, int Next)>();
            work.Push((root, 0));
            while (work.Count > 0)
            {
                var (type, next) = work.Pop();
                if (next == 0)
                {
                    index[type] = low[type] = index.Count;
                    stack.Push(type);
                    held.Add(type);
                }
                else
                {
                    low[type] = Math.Min(low[type], low[edges[type][next - 1]]);
                }

                while (next < edges[type].Count)
                {
                    var to = edges[type][next++];
                    if (!index.ContainsKey(to))
                    {
                        work.Push((type, next));
                        work.Push((to, 0));
                        next = -1;
                        break;
                    }

                    if (held.Contains(to))
                    {
                        low[type] = Math.Min(low[type], index[to]);
                    }
                }

                if (next >= 0 && low[type] == index[type])
                {
                    var cycle = new HashSet<INamedTypeSymbol>(SymbolEqualityComparer.Default);
                    INamedTypeSymbol member;
                    do
                    {
                        member = stack.Pop();
                        held.Remove(member);
                        cycle.Add(member);
                    }
                    while (!SymbolEqualityComparer.Default.Equals(member, type));

                    if (cycle.Count > 1)
                    {
                        cycles.Add(cycle);
                    }
                }
            }
        }

        return cycles;
    }

    private sealed class ReadComparer : IEqualityComparer<(ISymbol Reader, ISymbol Read)>
    {
        public static readonly ReadComparer Instance = new();

        public bool Equals((ISymbol Reader, ISymbol Read) x, (ISymbol Reader, ISymbol Read) y) =>
            SymbolEqualityComparer.Default.Equals(x.Reader, y.Reader) && SymbolEqualityComparer.Default.Equals(x.Read, y.Read);

        public int GetHashCode((ISymbol Reader, ISymbol Read) obj) =>
            unchecked((SymbolEqualityComparer.Default.GetHashCode(obj.Reader) * 397) ^ SymbolEqualityComparer.Default.GetHashCode(obj.Read));
    }
}
