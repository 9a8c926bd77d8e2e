using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers;

/// <summary>Whether the generator can give a board its Model and Review(); generator and analyzer ask here.</summary>
internal static class BoardForm
{
    public const string Model = "Model";
    public const string Review = "Review";
    public const string Kept = "railRulesModel";
    public const string Make = "RailRulesModel";
    public const string Walk = "RailRulesWalk";

    private static readonly string[] Names = [Model, Review, Kept, Make];

    /// <summary>Why a board is given no Model, so that nothing is generated; null where it is given one.</summary>
    public static string? WhyNoModel(INamedTypeSymbol board)
    {
        for (var type = board; type is not null; type = type.ContainingType)
        {
            if (type.IsGenericType)
            {
                return $"'{type.Name}' has type parameters";
            }

            if (!TeamRules.IsPartial(type))
            {
                return SymbolEqualityComparer.Default.Equals(type, board) ? $"'{type.Name}' is not partial; write 'partial class {type.Name}'" : $"'{type.Name}' around it is not partial";
            }

            if (type.IsFileLocal)
            {
                return $"'{type.Name}' is of one file only";
            }
        }

        return Clash(board) is { } own ? $"'{own.Name}' is a member of its own" : null;
    }

    /// <summary>A member of the user's own that has a name which the generator needs.</summary>
    public static ISymbol? Clash(INamedTypeSymbol board)
    {
        foreach (var name in Names)
        {
            if (board.Name == name)
            {
                return board;
            }

            for (var type = board; type is not null; type = type.BaseType)
            {
                foreach (var member in type.GetMembers(name))
                {
                    if (!IsGenerated(member))
                    {
                        return member;
                    }
                }
            }
        }

        return null;
    }

    /// <summary>Whether the generator wrote a member.</summary>
    public static bool IsGenerated(ISymbol member)
    {
        foreach (var attribute in member.GetAttributes())
        {
            if (attribute.AttributeClass?.Name == "GeneratedCodeAttribute" && attribute.ConstructorArguments is [{ Value: "RailRules" }, ..])
            {
                return true;
            }
        }

        return false;
    }
}
