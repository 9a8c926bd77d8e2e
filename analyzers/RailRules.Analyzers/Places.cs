using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>
/// Where findings are shown. A finding belongs to the static member whose evaluation made its datum, and is shown in that member's type: at the datum's
/// expression where that lies there, else at the outermost expression of the member that led to it. So a finding is always inside the type whose analysis reports it.
/// </summary>
internal static class Places
{
    /// <summary>The node at which a finding of <paramref name="type"/> with this origin is shown; null when the origin belongs to a member of another type.</summary>
    public static SyntaxNode? Within(INamedTypeSymbol type, Origin? origin)
    {
        if (origin is null || !IsWithin(type, origin.Member.ContainingType))
        {
            return null;
        }

        if (Contains(type, origin.Node))
        {
            return origin.Node;
        }

        var outermost = origin;
        while (outermost.Caller is { } caller)
        {
            outermost = caller;
        }

        return Contains(type, outermost.Node) ? outermost.Node : null;
    }

    /// <summary>The identifier of a type's first declaration: the last resort.</summary>
    public static Location Declaration(INamedTypeSymbol type, CancellationToken cancellation)
    {
        foreach (var reference in type.DeclaringSyntaxReferences)
        {
            if (reference.GetSyntax(cancellation) is BaseTypeDeclarationSyntax declaration)
            {
                return declaration.Identifier.GetLocation();
            }
        }

        return type.Locations.FirstOrDefault() ?? Location.None;
    }

    public static bool IsWithin(INamedTypeSymbol type, INamedTypeSymbol? inner)
    {
        for (var current = inner; current is not null; current = current.ContainingType)
        {
            if (SymbolEqualityComparer.Default.Equals(current, type))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Contains(INamedTypeSymbol type, SyntaxNode node)
    {
        foreach (var reference in type.DeclaringSyntaxReferences)
        {
            if (reference.SyntaxTree == node.SyntaxTree && reference.Span.Contains(node.Span))
            {
                return true;
            }
        }

        return false;
    }
}
