using Microsoft.CodeAnalysis;
using UnitsNet;

namespace RailRules.Analyzers.Evaluation;

/// <summary>From types of the evaluated compilation to the types of the analyzer's own process: by metadata name, never by loading the user's assemblies.</summary>
internal sealed class TypeMap(Compilation compilation)
{
    private readonly Dictionary<ITypeSymbol, Type?> types = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<INamedTypeSymbol, Type?> definitions = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<IAssemblySymbol, AssemblyKind> assemblies = new(SymbolEqualityComparer.Default);

    /// <summary>Whether the type is declared in the evaluated source.</summary>
    public bool IsSource(ITypeSymbol type) => type.IsAnonymousType || SymbolEqualityComparer.Default.Equals(type.ContainingAssembly, compilation.Assembly);

    public bool IsSource(ISymbol symbol) => SymbolEqualityComparer.Default.Equals(symbol.ContainingAssembly, compilation.Assembly);

    /// <summary>The type that stands for the symbol in this process; null where there is none. Types of the source are <see cref="UserObject"/> or <see cref="UserEnum"/>.</summary>
    public Type? Find(ITypeSymbol type)
    {
        if (!types.TryGetValue(type, out var found))
        {
            types[type] = found = Make(type);
        }

        return found;
    }

    public AssemblyKind Kind(IAssemblySymbol? assembly)
    {
        if (assembly is null)
        {
            return AssemblyKind.Other;
        }

        if (!assemblies.TryGetValue(assembly, out var kind))
        {
            assemblies[assembly] = kind = KindOf(assembly);
        }

        return kind;
    }

    /// <summary>The metadata name with namespace and containing types.</summary>
    public static string MetadataName(INamedTypeSymbol type)
    {
        if (type.ContainingType is { } containing)
        {
            return MetadataName(containing) + "+" + type.MetadataName;
        }

        return type.ContainingNamespace is { IsGlobalNamespace: false } space ? FullName(space) + "." + type.MetadataName : type.MetadataName;
    }

    private static string FullName(INamespaceSymbol space) =>
        space.ContainingNamespace is { IsGlobalNamespace: false } outer ? FullName(outer) + "." + space.Name : space.Name;

    private Type? Make(ITypeSymbol type)
    {
        switch (type)
        {
            case IArrayTypeSymbol array:
                return Find(array.ElementType) is not { } element ? null : array.IsSZArray ? element.MakeArrayType() : element.MakeArrayType(array.Rank);
            case INamedTypeSymbol named:
                return MakeNamed(named);
            default:
                return null;
        }
    }

    private Type? MakeNamed(INamedTypeSymbol type)
    {
        if (type.TypeKind == TypeKind.Error)
        {
            return null;
        }

        if (type.Name is "Index" or "Range" && type.ContainingNamespace is { Name: "System", ContainingNamespace.IsGlobalNamespace: true })
        {
            return type.Name == "Index" ? typeof(IndexValue) : typeof(RangeValue);
        }

        if (IsSource(type))
        {
            return type.TypeKind switch
            {
                TypeKind.Enum => typeof(UserEnum),
                TypeKind.Delegate => MakeDelegate(type),
                _ when type.IsStatic => null,
                _ => typeof(UserObject),
            };
        }

        if (type.IsTupleType && type.TupleElements.Length > 7)
        {
            return null;
        }

        if (IsSpan(type))
        {
            return Find(type.TypeArguments[0])?.MakeArrayType();
        }

        var definition = type.OriginalDefinition;
        if (!definitions.TryGetValue(definition, out var known))
        {
            definitions[definition] = known = AllowList.FindType(MetadataName(definition), Kind(definition.ContainingAssembly));
        }

        if (known is null || !known.IsGenericTypeDefinition)
        {
            return known;
        }

        var arguments = AllTypeArguments(type);
        var mapped = new Type[arguments.Count];
        for (var i = 0; i < mapped.Length; i++)
        {
            if (Find(arguments[i]) is not { } argument)
            {
                return null;
            }

            mapped[i] = argument;
        }

        if (known == typeof(Nullable<>) && !mapped[0].IsValueType)
        {
            // A struct of the source is a reference here; null stands for its absence.
            return mapped[0];
        }

        try
        {
            return known.MakeGenericType(mapped);
        }
        catch (ArgumentException)
        {
            // A constraint that the stand-in for a source type does not meet.
            return null;
        }
    }

    private Type? MakeDelegate(INamedTypeSymbol type)
    {
        if (type.DelegateInvokeMethod is not { RefKind: RefKind.None } invoke || invoke.Parameters.Length > 8)
        {
            return null;
        }

        var types = new List<Type>();
        foreach (var parameter in invoke.Parameters)
        {
            if (parameter.RefKind != RefKind.None || Find(parameter.Type) is not { } mapped)
            {
                return null;
            }

            types.Add(mapped);
        }

        if (invoke.ReturnsVoid)
        {
            return System.Linq.Expressions.Expression.GetActionType([.. types]);
        }

        if (Find(invoke.ReturnType) is not { } result)
        {
            return null;
        }

        types.Add(result);
        return System.Linq.Expressions.Expression.GetFuncType([.. types]);
    }

    public static bool IsSpan(ITypeSymbol type) =>
        type is INamedTypeSymbol { Name: "ReadOnlySpan" or "Span", Arity: 1, ContainingNamespace: { Name: "System", ContainingNamespace.IsGlobalNamespace: true } };

    /// <summary>Type arguments of the type and of those that contain it, outermost first, as reflection counts them.</summary>
    public static List<ITypeSymbol> AllTypeArguments(INamedTypeSymbol type)
    {
        var all = type.ContainingType is { } containing ? AllTypeArguments(containing) : [];
        all.AddRange(type.TypeArguments);
        return all;
    }

    private AssemblyKind KindOf(IAssemblySymbol assembly)
    {
        if (SymbolEqualityComparer.Default.Equals(assembly, compilation.Assembly))
        {
            return AssemblyKind.Source;
        }

        switch (assembly.Name)
        {
            case "RailRules":
                return AssemblyKind.RailRules;
            case "UnitsNet":
                return AssemblyKind.UnitsNet;
        }

        var token = assembly.Identity.PublicKeyToken;
        return token.Length == 8 && BitConverter.ToString([.. token]) is "B0-3F-5F-7F-11-D5-0A-3A" or "B7-7A-5C-56-19-34-E0-89" or "CC-7B-13-FF-CD-2D-DD-51" or "7C-EC-85-D7-BE-A7-79-8E" or "AD-B9-79-38-29-DD-AE-60"
            ? AssemblyKind.Framework
            : AssemblyKind.Other;
    }
}

/// <summary>Whose an assembly is.</summary>
internal enum AssemblyKind
{
    /// <summary>Any compiled assembly that is none of the others.</summary>
    Other,

    /// <summary>The evaluated compilation itself.</summary>
    Source,

    /// <summary>RailRules.</summary>
    RailRules,

    /// <summary>UnitsNet.</summary>
    UnitsNet,

    /// <summary>The base class library, known by its public key token.</summary>
    Framework,
}
