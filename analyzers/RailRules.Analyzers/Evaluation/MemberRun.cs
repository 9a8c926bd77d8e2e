using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>The evaluation of one static member while it runs: its problems, reads, steps and depth.</summary>
internal sealed class MemberRun(ISymbol member, MemberRun? outer)
{
    private readonly HashSet<(ProblemKind, SyntaxNode)> told = [];
    private readonly HashSet<ISymbol> seen = new(SymbolEqualityComparer.Default);
    private readonly ImmutableArray<Problem>.Builder problems = ImmutableArray.CreateBuilder<Problem>();
    private readonly ImmutableArray<ISymbol>.Builder reads = ImmutableArray.CreateBuilder<ISymbol>();

    public ISymbol Member { get; } = member;

    public INamedTypeSymbol Type { get; } = member.ContainingType;

    /// <summary>The evaluation that asked for this one.</summary>
    public MemberRun? Outer { get; } = outer;

    public long Steps;

    /// <summary>Steps of the members read, what is read twice counted twice.</summary>
    public long ReadSteps;

    public int Depth;

    /// <summary>Whether something has been met that explains an unknown value.</summary>
    public bool HasCause;

    public IReadOnlyList<ISymbol> Reads => reads;

    public void Add(Problem problem)
    {
        if (told.Add((problem.Kind, problem.Origin.Node)))
        {
            problems.Add(problem);
        }
    }

    /// <summary>Notes that a static was read; whether that is news.</summary>
    public bool Read(ISymbol read)
    {
        if (!seen.Add(read))
        {
            return false;
        }

        reads.Add(read);
        return true;
    }

    public MemberResult Complete(object? value, object? raw)
    {
        var bound = Steps + ReadSteps;
        return new MemberResult(Member, value, raw, problems.ToImmutable(), reads.ToImmutable(), Steps, bound < 0 ? long.MaxValue : bound);
    }
}
