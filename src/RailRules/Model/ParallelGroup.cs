using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// Branches in parallel, each a series of elements.
/// </summary>
public sealed record ParallelGroup : Element
{
    /// <summary>Makes a parallel group.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public ParallelGroup([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>The branches.</summary>
    public ImmutableArray<ImmutableArray<Element>> Branches { get; init; } = [];

    /// <summary>Where the makers allow these devices in parallel: the citation.</summary>
    public string? ParallelAllowed { get; init; }
}
