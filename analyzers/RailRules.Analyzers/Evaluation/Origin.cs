using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Where something was written: the innermost expression, and through <see cref="Caller"/> the calls outwards to the static member's initialiser.</summary>
internal sealed class Origin(SyntaxNode node, Origin? caller, ISymbol member)
{
    /// <summary>The expression.</summary>
    public SyntaxNode Node { get; } = node;

    /// <summary>The call that led here; null in the member's own initialiser.</summary>
    public Origin? Caller { get; } = caller;

    /// <summary>The static member that was being evaluated.</summary>
    public ISymbol Member { get; } = member;
}
