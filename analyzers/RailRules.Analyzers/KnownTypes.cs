using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers;

/// <summary>The library's types as the user's compilation sees them, resolved once per compilation.</summary>
internal sealed class KnownTypes
{
    private readonly INamedTypeSymbol board;
    private readonly INamedTypeSymbol source;
    private readonly INamedTypeSymbol? waiver;
    private readonly IAssemblySymbol library;

    private KnownTypes(INamedTypeSymbol board, INamedTypeSymbol source, INamedTypeSymbol? waiver)
    {
        this.board = board;
        this.source = source;
        this.waiver = waiver;
        library = source.ContainingAssembly;
    }

    public static KnownTypes? TryCreate(Compilation compilation) =>
        compilation.GetTypeByMetadataName("RailRules.BoardAttribute") is { } board && compilation.GetTypeByMetadataName("RailRules.Source") is { } source
            ? new KnownTypes(board, source, compilation.GetTypeByMetadataName("RailRules.WaiverAttribute"))
            : null;

    public bool IsBoard(INamedTypeSymbol type)
    {
        foreach (var attribute in type.GetAttributes())
        {
            if (SymbolEqualityComparer.Default.Equals(attribute.AttributeClass, board))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The waivers that stand on a class or member.</summary>
    public IEnumerable<AttributeData> WaiversOn(ISymbol symbol) =>
        waiver is null ? [] : symbol.GetAttributes().Where(attribute => SymbolEqualityComparer.Default.Equals(attribute.AttributeClass, waiver));

    /// <summary>The board in which a type lies: itself, or the outermost board class around it.</summary>
    public INamedTypeSymbol? BoardAround(INamedTypeSymbol type)
    {
        INamedTypeSymbol? found = null;
        for (var around = type; around is not null; around = around.ContainingType)
        {
            if (IsBoard(around))
            {
                found = around;
            }
        }

        return found;
    }

    /// <summary>Whether the type is one of this library's.</summary>
    public bool IsOfLibrary(ITypeSymbol type) => SymbolEqualityComparer.Default.Equals(type.ContainingAssembly, library);

    /// <summary>Whether a value of this type is, or may hold, objects of the model.</summary>
    public bool MayHoldModel(ITypeSymbol? type) => Holds(type, IsModelOrOpen, 0);

    /// <summary>Whether a value of this type is, or directly holds, types of the library.</summary>
    public bool HoldsLibraryTypes(ITypeSymbol? type) => Holds(type, candidate => SymbolEqualityComparer.Default.Equals(candidate.ContainingAssembly, library), 0);

    /// <summary>Whether a value of this type is, or directly holds, sources.</summary>
    public bool HoldsSources(ITypeSymbol? type) => Holds(type, IsSource, 0);

    /// <summary>
    /// The static members of a type whose values may hold objects of the model, in the order in which they stand: fields and properties, constants left out.
    /// </summary>
    public IEnumerable<ISymbol> ModelMembers(INamedTypeSymbol type)
    {
        foreach (var member in type.GetMembers())
        {
            switch (member)
            {
                case IFieldSymbol { Type: { Name: nameof(BoardModel) } held } when IsOfLibrary(held):
                case IPropertySymbol { Type: { Name: nameof(BoardModel) } given } when IsOfLibrary(given):
                    // A board's own description, which the generator adds.
                    break;
                case IFieldSymbol { IsStatic: true, IsConst: false, IsImplicitlyDeclared: false } field when MayHoldModel(field.Type):
                case IPropertySymbol { IsStatic: true, IsIndexer: false, GetMethod: not null, PartialDefinitionPart: null } property when MayHoldModel(property.Type):
                    yield return member;
                    break;
                default:
                    break;
            }
        }
    }

    private bool IsSource(INamedTypeSymbol type)
    {
        for (var current = type; current is not null; current = current.BaseType)
        {
            if (SymbolEqualityComparer.Default.Equals(current, source))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Types of the library, types the user wrote, and types that say nothing of what they hold.</summary>
    private bool IsModelOrOpen(INamedTypeSymbol type) =>
        SymbolEqualityComparer.Default.Equals(type.ContainingAssembly, library)
        || type.SpecialType is SpecialType.System_Object or SpecialType.System_Collections_IEnumerable
        || (type.TypeKind is TypeKind.Class or TypeKind.Struct or TypeKind.Interface && !type.DeclaringSyntaxReferences.IsEmpty);

    private static bool Holds(ITypeSymbol? type, Func<INamedTypeSymbol, bool> wanted, int depth) => type switch
    {
        null => false,
        _ when depth > 8 => false,
        IArrayTypeSymbol array => Holds(array.ElementType, wanted, depth + 1),
        INamedTypeSymbol named => wanted(named) || named.TypeArguments.Any(argument => Holds(argument, wanted, depth + 1)),
        _ => false,
    };
}
