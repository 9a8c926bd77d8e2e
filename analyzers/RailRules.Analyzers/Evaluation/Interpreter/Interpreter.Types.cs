using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <content>Types in scope, type tests, defaults.</content>
internal sealed partial class Interpreter
{
    /// <summary>Names in the name of a type, at most.</summary>
    private const int LargestType = 500;

    private readonly Dictionary<ITypeSymbol, object?> defaults = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<INamedTypeSymbol, TypeLayout> layouts = new(SymbolEqualityComparer.Default);

    private ITypeSymbol? TypeOf(IOperation operation, Frame frame) => operation.Type is { } type ? Resolve(type, frame) : null;

    /// <summary>The type with the type arguments in scope put in.</summary>
    private ITypeSymbol Resolve(ITypeSymbol type, Frame frame) => frame.Activation.TypeArguments is { } arguments ? Substitute(type, arguments) : type;

    private ITypeSymbol Substitute(ITypeSymbol type, TypeArguments arguments)
    {
        switch (type)
        {
            case ITypeParameterSymbol parameter:
                return arguments.Find(parameter) ?? parameter;
            case IArrayTypeSymbol array:
                return Substitute(array.ElementType, arguments) is var element && ReferenceEquals(element, array.ElementType) ? array : compilation.CreateArrayTypeSymbol(element, array.Rank);
            case INamedTypeSymbol { IsGenericType: true, IsUnboundGenericType: false } named:
                return SubstituteNamed(named, arguments);
            default:
                return type;
        }
    }

    private INamedTypeSymbol SubstituteNamed(INamedTypeSymbol named, TypeArguments arguments)
    {
        var containing = named.ContainingType is { IsGenericType: true } outer ? SubstituteNamed(outer, arguments) : named.ContainingType;
        var replaced = new ITypeSymbol[named.TypeArguments.Length];
        var changed = containing is not null && !SymbolEqualityComparer.Default.Equals(containing, named.ContainingType);
        for (var i = 0; i < replaced.Length; i++)
        {
            replaced[i] = Substitute(named.TypeArguments[i], arguments);
            changed |= !ReferenceEquals(replaced[i], named.TypeArguments[i]);
        }

        if (!changed)
        {
            return named;
        }

        var definition = named.OriginalDefinition;
        if (containing is not null && containing.IsGenericType)
        {
            foreach (var nested in containing.GetTypeMembers(named.Name, named.Arity))
            {
                if (SymbolEqualityComparer.Default.Equals(nested.OriginalDefinition, definition))
                {
                    definition = nested;
                    break;
                }
            }
        }

        Bounded(replaced);
        return replaced.Length == 0 ? definition : definition.Construct(replaced);
    }

    /// <summary>Types that grow without end in generic recursion would make every look at them slow.</summary>
    private static void Bounded(ITypeSymbol[] types)
    {
        var left = LargestType;
        foreach (var type in types)
        {
            Count(type, ref left);
        }
    }

    private static void Count(ITypeSymbol type, ref int left)
    {
        if (--left < 0)
        {
            throw new InsufficientExecutionStackException();
        }

        switch (type)
        {
            case IArrayTypeSymbol array:
                Count(array.ElementType, ref left);
                break;
            case INamedTypeSymbol { IsGenericType: true } named:
                foreach (var argument in named.TypeArguments)
                {
                    Count(argument, ref left);
                }

                if (named.ContainingType is { IsGenericType: true } containing)
                {
                    Count(containing, ref left);
                }

                break;
        }
    }

    /// <summary>The method with the type arguments in scope put in.</summary>
    private IMethodSymbol Resolve(IMethodSymbol method, Frame frame)
    {
        if (frame.Activation.TypeArguments is not { } arguments || (!method.IsGenericMethod && method.ContainingType?.IsGenericType != true))
        {
            return method;
        }

        var definition = method.OriginalDefinition;
        if (method.ContainingType is { IsGenericType: true } containing && SubstituteNamed(containing, arguments) is var owner && !SymbolEqualityComparer.Default.Equals(owner, containing.OriginalDefinition))
        {
            foreach (var member in owner.GetMembers(method.Name))
            {
                if (SymbolEqualityComparer.Default.Equals(member.OriginalDefinition, definition))
                {
                    definition = (IMethodSymbol)member;
                    break;
                }
            }
        }

        if (!method.IsGenericMethod)
        {
            return definition;
        }

        var replaced = new ITypeSymbol[method.TypeArguments.Length];
        for (var i = 0; i < replaced.Length; i++)
        {
            replaced[i] = Substitute(method.TypeArguments[i], arguments);
        }

        Bounded(replaced);
        return definition.Construct(replaced);
    }

    private static TypeArguments? ArgumentsOf(INamedTypeSymbol? type, IMethodSymbol? method, TypeArguments? outer)
    {
        if ((type is null || !type.IsGenericType) && method?.IsGenericMethod != true)
        {
            return outer;
        }

        var arguments = new TypeArguments();
        if (method is { IsGenericMethod: true })
        {
            for (var i = 0; i < method.TypeArguments.Length; i++)
            {
                arguments.Add(method.OriginalDefinition.TypeParameters[i], method.TypeArguments[i]);
            }
        }

        for (var at = type; at is not null; at = at.ContainingType)
        {
            for (var i = 0; i < at.TypeArguments.Length; i++)
            {
                arguments.Add(at.OriginalDefinition.TypeParameters[i], at.TypeArguments[i]);
            }
        }

        arguments.AddAll(outer);
        return arguments;
    }

    /// <summary>The default of a type.</summary>
    private object? Default(ITypeSymbol? type)
    {
        if (type is null || !type.IsValueType || type.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T || type.SpecialType == SpecialType.System_Void)
        {
            return null;
        }

        if (!defaults.TryGetValue(type, out var value))
        {
            defaults[type] = value = MakeDefault(type);
        }

        return value;
    }

    private object? MakeDefault(ITypeSymbol type)
    {
        if (type is INamedTypeSymbol named && types.IsSource(type))
        {
            return type.TypeKind == TypeKind.Enum ? new UserEnum(named, 0) : NewObject(named);
        }

        if (type is INamedTypeSymbol { IsTupleType: true } tuple && types.Find(type) is { } real)
        {
            var values = new object?[tuple.TupleElements.Length];
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = Default(tuple.TupleElements[i].Type);
            }

            return Activator.CreateInstance(real, values);
        }

        return types.Find(type) is { IsValueType: true } plain ? Activator.CreateInstance(plain) : Unknown.Value;
    }

    /// <summary>A value that comes out of library code, where structs of the source have no default of their own.</summary>
    private object? Normalised(object? value, ITypeSymbol? type)
    {
        if (value is not null && type is INamedTypeSymbol { IsTupleType: true } tuple && IsTuple(value) && MentionsSource(tuple))
        {
            var parts = TupleParts(value);
            if (parts.Length == tuple.TupleElements.Length && Array.Exists(parts, part => part is null or UserEnum { Type: null } || IsTuple(part)))
            {
                for (var i = 0; i < parts.Length; i++)
                {
                    parts[i] = Normalised(parts[i], tuple.TupleElements[i].Type);
                }

                return Activator.CreateInstance(value.GetType(), parts);
            }
        }

        if (type is null || !type.IsValueType || (value is not null && value is not UserEnum { Type: null }))
        {
            return value;
        }

        if (type.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T)
        {
            return value is UserEnum user && Underlying(type) is INamedTypeSymbol { TypeKind: TypeKind.Enum } inner ? new UserEnum(inner, user.Bits) : value;
        }

        if (!types.IsSource(type))
        {
            return value;
        }

        return value is UserEnum known ? new UserEnum((INamedTypeSymbol)type, known.Bits) : Default(type);
    }

    private TypeLayout LayoutOf(INamedTypeSymbol type)
    {
        var key = type.IsAnonymousType ? type : type.OriginalDefinition;
        if (!layouts.TryGetValue(key, out var layout))
        {
            layouts[key] = layout = new TypeLayout(type);
        }

        return layout;
    }

    /// <summary>A new object of a source type, all its fields at their defaults.</summary>
    private UserObject NewObject(INamedTypeSymbol type)
    {
        var layout = LayoutOf(type);
        var made = new UserObject(type, layout, this) { Maker = run };
        for (var i = 0; i < layout.Count; i++)
        {
            var fieldType = layout.Fields[i] switch { IFieldSymbol field => field.Type, IPropertySymbol property => property.Type, _ => null };
            if (fieldType is { IsValueType: true } or { TypeKind: TypeKind.TypeParameter })
            {
                var arguments = ArgumentsOfChain(type);
                made.Slots[i] = Default(arguments is null ? fieldType : Substitute(fieldType, arguments));
            }
        }

        return made;
    }

    /// <summary>Type arguments of a type and of the types from which it derives.</summary>
    private static TypeArguments? ArgumentsOfChain(INamedTypeSymbol type)
    {
        TypeArguments? all = null;
        for (var at = type; at is not null; at = at.BaseType)
        {
            all = ArgumentsOf(at, null, all);
        }

        return all;
    }

    /// <summary>Whether a value is of a type; <see cref="Unknown.Value"/> where that cannot be told.</summary>
    private object? IsInstance(object? value, ITypeSymbol type, IOperation at, Frame frame)
    {
        if (value is null)
        {
            return false;
        }

        type = Underlying(type)!;
        if (type.SpecialType == SpecialType.System_Object)
        {
            return true;
        }

        if (value is UserObject user)
        {
            return IsOf(user.Type, type);
        }

        if (value is UserEnum { Type: { } enumType })
        {
            return IsOf(enumType, type);
        }

        if (types.IsSource(type) && type.TypeKind != TypeKind.Delegate)
        {
            return false;
        }

        if (types.Find(type) is not { } real)
        {
            return Refuse(at, frame, $"whether a value is '{type.ToDisplayString()}' cannot be told", "avoid the type test");
        }

        // Stand-ins do not tell source types apart.
        return real.IsInstanceOfType(value) && MentionsSource(type)
            ? Refuse(at, frame, $"whether a value is '{type.ToDisplayString()}' cannot be told", "avoid the type test")
            : real.IsInstanceOfType(value);
    }

    private bool IsOf(INamedTypeSymbol from, ITypeSymbol to)
    {
        for (var at = from; at is not null; at = at.BaseType)
        {
            if (SymbolEqualityComparer.Default.Equals(at, to))
            {
                return true;
            }
        }

        if (to.TypeKind == TypeKind.Interface)
        {
            foreach (var implemented in from.AllInterfaces)
            {
                if (SymbolEqualityComparer.Default.Equals(implemented, to) || (to is INamedTypeSymbol { IsGenericType: true } && compilation.ClassifyCommonConversion(from, to).IsImplicit))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private bool MentionsSource(ITypeSymbol type) => type switch
    {
        IArrayTypeSymbol array => types.IsSource(array.ElementType) || MentionsSource(array.ElementType),
        INamedTypeSymbol named => types.IsSource(type) ? named.TypeKind == TypeKind.Delegate : Any(TypeMap.AllTypeArguments(named)),
        _ => false,
    };

    private bool Any(List<ITypeSymbol> arguments)
    {
        foreach (var argument in arguments)
        {
            if (types.IsSource(argument) || MentionsSource(argument))
            {
                return true;
            }
        }

        return false;
    }
}
