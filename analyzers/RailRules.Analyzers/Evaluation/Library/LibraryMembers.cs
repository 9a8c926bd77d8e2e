using System.Collections.Concurrent;
using System.Reflection;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>A member of a compiled assembly as it may be called here, or why not.</summary>
internal sealed class LibraryMember
{
    /// <summary>The method or constructor in this process; null where there is none or it is not listed.</summary>
    public MethodBase? Method { get; init; }

    public Allowed Rule { get; init; } = Allowed.Constant;

    /// <summary>Why the member is not called; null where it is.</summary>
    public string? Refusal { get; init; }

    public string Remedy { get; init; } = "";

    /// <summary>What must hold before the call; null where nothing need be looked at.</summary>
    public Guard? Guard { get; init; }

    /// <summary>Parameters that stand as arrays here and as spans in the symbol.</summary>
    public Type[] Parameters { get; init; } = [];

    public bool ReturnsSequence { get; init; }

    public bool ReturnsModel { get; init; }

    /// <summary>Whether results may have a default that the library does not know, being of a source type.</summary>
    public bool ReturnsSourceValue { get; init; }
}

/// <summary>Finds the members of this process's libraries that stand for members of the compilation's references: by name and parameter types, once a symbol.</summary>
internal sealed class LibraryMembers(TypeMap types)
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Public members by type and name, for all sessions: reflection gives them by the thousand.</summary>
    private static readonly ConcurrentDictionary<Type, Dictionary<string, List<MethodBase>>> Members = new();

    private readonly Dictionary<IMethodSymbol, LibraryMember> methods = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<IFieldSymbol, FieldInfo?> fields = new(SymbolEqualityComparer.Default);

    public LibraryMember Find(IMethodSymbol method)
    {
        if (!methods.TryGetValue(method, out var found))
        {
            methods[method] = found = Resolve(method);
        }

        return found;
    }

    /// <summary>A static field on the list; null where it is not.</summary>
    public FieldInfo? Find(IFieldSymbol field)
    {
        if (!fields.TryGetValue(field, out var found))
        {
            var type = types.Find(field.ContainingType);
            found = type?.GetField(field.Name, BindingFlags.Public | BindingFlags.Static);
            fields[field] = found = found is not null && AllowList.IsListed(found) ? found : null;
        }

        return found;
    }

    private LibraryMember Resolve(IMethodSymbol method)
    {
        var name = DisplayName(method);
        if (types.Kind(method.ContainingAssembly) == AssemblyKind.Other)
        {
            return new() { Refusal = $"'{name}' is code of another assembly ({method.ContainingAssembly?.Name})", Remedy = "write the value itself, or move the method into this project" };
        }

        var asked = StandIn(method) ?? method.OriginalDefinition;
        if (types.Find(method.ContainingType) is not { } owner)
        {
            // Static classes of extension methods whose work another listed class does.
            var other = OtherOwner(method);
            if (other is null)
            {
                return NotListed(name);
            }

            owner = other;
        }

        var definition = owner.IsGenericType ? owner.GetGenericTypeDefinition() : owner;
        if (Match(definition, asked) is not { } found)
        {
            return AllowList.HasName(definition, asked)
                ? new() { Refusal = $"'{name}' with these parameters has no counterpart in the analyzer", Remedy = "use another overload, or write the value itself" }
                : NotListed(name);
        }

        if (AllowList.Find(found) is not { } rule)
        {
            return NotListed(name);
        }

        if (Close(found, owner, method) is not { } closed)
        {
            return new() { Refusal = $"'{name}' is not evaluated for these types", Remedy = "write a loop or a method of your own" };
        }

        var parameters = closed.GetParameters();
        var parameterTypes = new Type[parameters.Length];
        for (var i = 0; i < parameters.Length; i++)
        {
            parameterTypes[i] = parameters[i].ParameterType;
        }

        var result = method.MethodKind == MethodKind.Constructor ? method.ContainingType : method.ReturnType;
        return new()
        {
            Method = closed,
            Rule = rule,
            Guard = Guards.For(found),
            Parameters = parameterTypes,
            ReturnsSequence = (definition == typeof(Enumerable) || (found.Name == "OfType" && definition == typeof(System.Collections.Immutable.ImmutableArray<>))) && closed is MethodInfo { ReturnType: { IsGenericType: true } sequence } && sequence.GetGenericTypeDefinition() == typeof(IEnumerable<>),
            ReturnsModel = (closed is MethodInfo { ReturnType: { IsValueType: false } type } ? type : closed is ConstructorInfo { DeclaringType: { IsValueType: false } made } ? made : null)?.Assembly == typeof(Rail).Assembly,
            ReturnsSourceValue = result.IsValueType && MentionsSource(result),
        };
    }

    private bool MentionsSource(ITypeSymbol type)
    {
        if (types.IsSource(type))
        {
            return true;
        }

        if (type is INamedTypeSymbol named)
        {
            foreach (var argument in named.TypeArguments)
            {
                if (MentionsSource(argument))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static LibraryMember NotListed(string name) =>
        new() { Refusal = $"'{name}' is not on the list of members that are evaluated", Remedy = "write the value itself" };

    public static string DisplayName(IMethodSymbol method)
    {
        var type = method.ContainingType?.Name;
        return method.MethodKind switch
        {
            MethodKind.Constructor => "new " + type,
            MethodKind.PropertyGet or MethodKind.PropertySet => type + "." + (method.AssociatedSymbol is IPropertySymbol { IsIndexer: true } ? "this[]" : method.AssociatedSymbol?.Name),
            _ => type + "." + method.Name,
        };
    }

    // Overloads over spans that newer compilers prefer do what these do.
    private static IMethodSymbol? StandIn(IMethodSymbol method) => method.ReducedFrom?.OriginalDefinition;

    private static Type? OtherOwner(IMethodSymbol method) =>
        method.ContainingType is { Name: "MemoryExtensions", ContainingNamespace.Name: "System" } && method.Name is "Contains" or "SequenceEqual" && method.Parameters.Length == 2 ? typeof(Enumerable) : null;

    private MethodBase? Match(Type definition, IMethodSymbol asked)
    {
        var constructor = asked.MethodKind is MethodKind.Constructor;
        MethodBase? loose = null;
        if (!Members.GetOrAdd(definition, static type => ByName(type)).TryGetValue(constructor ? ".ctor" : asked.MetadataName, out var candidates))
        {
            return null;
        }

        foreach (var candidate in candidates)
        {
            if (candidate.IsStatic != asked.IsStatic)
            {
                continue;
            }

            if ((candidate.IsGenericMethodDefinition ? candidate.GetGenericArguments().Length : 0) != asked.Arity)
            {
                continue;
            }

            var parameters = candidate.GetParameters();
            if (parameters.Length != asked.Parameters.Length)
            {
                continue;
            }

            var exact = true;
            var fits = true;
            for (var i = 0; i < parameters.Length && fits; i++)
            {
                var wanted = asked.Parameters[i];
                var actual = parameters[i].ParameterType;
                if (wanted.RefKind == RefKind.None == actual.IsByRef)
                {
                    fits = false;
                    break;
                }

                actual = actual.IsByRef ? actual.GetElementType()! : actual;
                if (!Same(wanted.Type, actual, out var span))
                {
                    fits = false;
                }

                exact &= !span;
            }

            // Conversion operators differ by what they return.
            if (fits && candidate is MethodInfo { IsSpecialName: true } converter && asked.MethodKind == MethodKind.Conversion && !Same(asked.ReturnType, converter.ReturnType, out _))
            {
                continue;
            }

            if (fits && exact)
            {
                return candidate;
            }

            if (fits)
            {
                loose ??= candidate;
            }
        }

        return loose;
    }

    private static Dictionary<string, List<MethodBase>> ByName(Type type)
    {
        var byName = new Dictionary<string, List<MethodBase>>(StringComparer.Ordinal) { [".ctor"] = [.. type.GetConstructors()] };
        foreach (var method in type.GetMethods(Everything))
        {
            if (!byName.TryGetValue(method.Name, out var same))
            {
                byName[method.Name] = same = [];
            }

            same.Add(method);
        }

        return byName;
    }

    /// <summary>Whether a parameter's type in metadata is the given type; an array stands for a span.</summary>
    private bool Same(ITypeSymbol symbol, Type type, out bool span)
    {
        span = false;
        switch (symbol)
        {
            case ITypeParameterSymbol parameter:
                return type.IsGenericParameter && type.GenericParameterPosition == Position(parameter) && (type.DeclaringMethod is not null) == (parameter.TypeParameterKind == TypeParameterKind.Method);
            case IArrayTypeSymbol array:
                return type.IsArray && type.GetArrayRank() == array.Rank && Same(array.ElementType, type.GetElementType()!, out _);
            case INamedTypeSymbol named:
                if (TypeMap.IsSpan(named))
                {
                    span = true;
                    if (type.IsArray && type.GetArrayRank() == 1)
                    {
                        return Same(named.TypeArguments[0], type.GetElementType()!, out _);
                    }

                    return type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IEnumerable<>) && Same(named.TypeArguments[0], type.GetGenericArguments()[0], out _);
                }

                var arguments = TypeMap.AllTypeArguments(named);
                if (arguments.Count == 0)
                {
                    return !type.IsGenericParameter && type.FullName == TypeMap.MetadataName(named);
                }

                if (!type.IsGenericType || type.GetGenericTypeDefinition().FullName != TypeMap.MetadataName(named.OriginalDefinition))
                {
                    return false;
                }

                var given = type.GetGenericArguments();
                for (var i = 0; i < given.Length; i++)
                {
                    if (!Same(arguments[i], given[i], out _))
                    {
                        return false;
                    }
                }

                return true;
            default:
                return false;
        }
    }

    private static int Position(ITypeParameterSymbol parameter)
    {
        var position = parameter.Ordinal;
        if (parameter.TypeParameterKind == TypeParameterKind.Type)
        {
            for (var containing = parameter.ContainingType?.ContainingType; containing is not null; containing = containing.ContainingType)
            {
                position += containing.Arity;
            }
        }

        return position;
    }

    private MethodBase? Close(MethodBase found, Type owner, IMethodSymbol method)
    {
        try
        {
            if (owner.IsGenericType)
            {
                found = MethodBase.GetMethodFromHandle(found.MethodHandle, owner.TypeHandle)!;
            }

            if (found is not MethodInfo { IsGenericMethodDefinition: true } open)
            {
                return found;
            }

            var arguments = new Type[method.TypeArguments.Length];
            for (var i = 0; i < arguments.Length; i++)
            {
                if (types.Find(method.TypeArguments[i]) is not { } argument)
                {
                    return null;
                }

                arguments[i] = argument;
            }

            return open.MakeGenericMethod(arguments);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
