using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>What the evaluation of one static member gave.</summary>
internal sealed class MemberResult
{
    /// <summary>Makes the result of a completed evaluation.</summary>
    internal MemberResult(ISymbol member, object? value, object? raw, ImmutableArray<Problem> problems, ImmutableArray<ISymbol> reads, long steps, long stepsBound)
    {
        Member = member;
        IsUnknown = value is Unknown;
        Value = IsUnknown ? null : value;
        Raw = IsUnknown ? value : raw;
        Problems = problems;
        Reads = reads;
        Steps = steps;
        StepsBound = stepsBound;
    }

    /// <summary>The field or property.</summary>
    public ISymbol Member { get; }

    /// <summary>The value; undefined where <see cref="IsUnknown"/>. A lazy sequence of objects is given as an array of its elements.</summary>
    public object? Value { get; }

    /// <summary>Whether the value could not be worked out.</summary>
    public bool IsUnknown { get; }

    /// <summary>Problems of this member's own evaluation, in the order met, each once per expression.</summary>
    public ImmutableArray<Problem> Problems { get; }

    /// <summary>Static members read directly: fields and automatic properties.</summary>
    public ImmutableArray<ISymbol> Reads { get; }

    /// <summary>Own steps; those of the members read are theirs.</summary>
    public long Steps { get; }

    /// <summary>An upper bound of the steps of this member and all that it reads (what is read twice counts twice).</summary>
    internal long StepsBound { get; }

    /// <summary>The value as the evaluated program has it.</summary>
    internal object? Raw { get; }
}
