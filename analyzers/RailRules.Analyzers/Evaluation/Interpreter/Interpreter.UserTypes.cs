using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Objects of source types: members without a body, equality, order and text.</content>
internal sealed partial class Interpreter
{
    private readonly Dictionary<(INamedTypeSymbol, string), IMethodSymbol?> ownMethods = [];

    /// <summary>Members that the compiler writes: accessors of automatic properties and what records have.</summary>
    private object? CallWithoutBody(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        if (method.AssociatedSymbol is IPropertySymbol property)
        {
            return Automatic(method, property, self, arguments, at, frame);
        }

        if (method.IsStatic && arguments.Length == 2 && method.Name is "op_Equality" or "op_Inequality")
        {
            return HasUnknown(arguments) ? Unknown.Value : InLibrary(() => ValuesEqual(arguments[0], arguments[1]), at, frame) == (method.Name == "op_Equality");
        }

        if ((self is Storage location ? location.Get() : self) is { } value && (method.IsImplicitlyDeclared || value is UserEnum))
        {
            return method.Name == "Deconstruct" && value is UserObject user ? DeconstructRecord(method, user, arguments) : CallInherited(method, value, arguments, at, frame);
        }

        return Refuse(at, frame, $"'{LibraryMembers.DisplayName(method)}' has no body to evaluate", "write a plain method");
    }

    private object? Automatic(IMethodSymbol accessor, IPropertySymbol property, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        if (property.IsStatic)
        {
            return accessor.MethodKind == MethodKind.PropertyGet ? ReadStatic(property, at, frame) : RefuseStaticWrite(at, frame);
        }

        var owner = self as Storage ?? new Holder(self);
        if (owner.Get() is not UserObject user || !user.Layout.TryGet(property, out var slot))
        {
            return Refuse(at, frame, $"'{property.Name}' is not evaluated here", "write the value itself");
        }

        if (accessor.MethodKind == MethodKind.PropertyGet)
        {
            return user.Slots[slot];
        }

        SetSlot(owner, slot, arguments[0], at, frame);
        return null;
    }

    private Unknown RefuseStaticWrite(IOperation at, Frame frame)
    {
        Refuse(at, frame, StaticReason, "make a new member with the value");
        throw new RefusedSignal();
    }

    private static object? DeconstructRecord(IMethodSymbol method, UserObject user, object?[] arguments)
    {
        for (var i = 0; i < method.Parameters.Length; i++)
        {
            foreach (var member in user.Layout.Fields)
            {
                if (member is IPropertySymbol property && property.Name == method.Parameters[i].Name && user.Layout.TryGet(property, out var slot))
                {
                    ((Storage)arguments[i]!).Set(user.Slots[slot]);
                }
            }
        }

        return null;
    }

    /// <summary>What objects of source types and enumerations inherit from the library.</summary>
    private object? CallInherited(IMethodSymbol method, object self, object?[] arguments, IOperation at, Frame frame)
    {
        if (HasUnknown(arguments))
        {
            return Unknown.Value;
        }

        switch (method.Name)
        {
            case "ToString":
                return self is UserEnum ? Text(self, arguments.Length > 0 ? arguments[0] as string : null, at, frame) : ObjectText((UserObject)self, at, frame);
            case "Equals" when arguments.Length == 1:
                return self is UserEnum left ? left.Equals(arguments[0]) : InLibrary(() => ValuesEqual(self, arguments[0]), at, frame);
            case "CompareTo" when self is UserEnum ordered:
                return ordered.CompareTo(arguments[0]);
            case "HasFlag" when self is UserEnum flags && arguments[0] is UserEnum flag:
                return (flags.Bits & flag.Bits) == flag.Bits;
            case "GetValueOrDefault" or "get_Value" when method.ContainingType.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T:
                return self;
            case "get_HasValue":
                return true;
            case "GetHashCode":
                return Refuse(at, frame, "hash codes are not evaluated", "use the data itself");
            default:
                return Refuse(at, frame, $"'{LibraryMembers.DisplayName(method)}' is not on the list of members that are evaluated", "write the value itself");
        }
    }

    /// <summary>Equality as <c>EqualityComparer.Default</c> has it.</summary>
    private bool ValuesEqual(object? left, object? right)
    {
        if (left is Unknown || right is Unknown)
        {
            throw new RefusedSignal();
        }

        return left is UserObject user ? UserEquals(user, right) : Equals(left, right);
    }

    public bool UserEquals(UserObject left, object? right)
    {
        Tick();
        if (ReferenceEquals(left, right) || right is not UserObject other)
        {
            return ReferenceEquals(left, right);
        }

        if (OwnMethod(left.Type, "Equals") is { } equals)
        {
            return FromLibrary((at, frame) => Call(equals, left, [right], at, frame)) is true;
        }

        if (!left.Type.IsRecord && !left.Type.IsAnonymousType && !left.Type.IsValueType)
        {
            return false;
        }

        if (!SymbolEqualityComparer.Default.Equals(left.Type, other.Type))
        {
            return false;
        }

        for (var i = 0; i < left.Slots.Length; i++)
        {
            if (left.Layout.Counts(i) && !ValuesEqual(left.Slots[i], other.Slots[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A hash that agrees with <see cref="UserEquals"/>; evaluated code never sees it.</summary>
    public int UserHash(UserObject value)
    {
        Tick();
        if (OwnMethod(value.Type, "Equals") is not null)
        {
            return value.Type.Name.Length;
        }

        if (!value.Type.IsRecord && !value.Type.IsAnonymousType && !value.Type.IsValueType)
        {
            return System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(value);
        }

        var hash = value.Slots.Length;
        for (var i = 0; i < value.Slots.Length; i++)
        {
            if (value.Layout.Counts(i))
            {
                hash = unchecked((hash * 31) + (value.Slots[i]?.GetHashCode() ?? 0));
            }
        }

        return hash;
    }

    public int UserCompare(UserObject left, object? right)
    {
        Tick();
        if (OwnMethod(left.Type, "CompareTo") is { } compare)
        {
            return FromLibrary((at, frame) => Call(compare, left, [right], at, frame)) is int order ? order : throw new UnknownSignal(false);
        }

        throw new ArgumentException("At least one object must implement IComparable.");
    }

    public string UserText(UserObject value, string? format = null) =>
        FromLibrary((at, frame) => TextOf(value, format, at, frame)) as string ?? throw new UnknownSignal(false);

    private object? FromLibrary(Func<IOperation, Frame, object?> work)
    {
        if (libraryCall is not { } call)
        {
            throw new RefusedSignal();
        }

        var result = work(call.At, call.Frame);
        return result is Unknown ? throw new UnknownSignal(false) : result;
    }

    /// <summary>A step taken inside library code.</summary>
    private void Tick()
    {
        if (libraryCall is { } call)
        {
            Step(call.At, call.Frame);
        }
        else if (run is not null)
        {
            run.Steps++;
        }
    }

    /// <summary>A method that the source itself writes for a type: for equality the typed one before the untyped one.</summary>
    private IMethodSymbol? OwnMethod(INamedTypeSymbol type, string name)
    {
        var key = (type, name);
        if (!ownMethods.TryGetValue(key, out var found))
        {
            ownMethods[key] = found = FindOwnMethod(type, name);
        }

        return found;
    }

    private IMethodSymbol? FindOwnMethod(INamedTypeSymbol type, string name)
    {
        IMethodSymbol? untyped = null;
        for (var at = type; at is not null && types.IsSource(at); at = at.BaseType)
        {
            foreach (var member in at.GetMembers(name))
            {
                if (member is not IMethodSymbol { IsStatic: false, IsImplicitlyDeclared: false, Parameters: [{ Type: var parameter }] } method)
                {
                    continue;
                }

                if (SymbolEqualityComparer.Default.Equals(parameter, at) && (at.IsRecord || name != "Equals" || Implements(type, "IEquatable")))
                {
                    return method;
                }

                if (parameter.SpecialType == SpecialType.System_Object && (method.IsOverride || name != "Equals"))
                {
                    untyped ??= method;
                }
            }
        }

        return untyped;
    }

    private static bool Implements(INamedTypeSymbol type, string name)
    {
        foreach (var implemented in type.AllInterfaces)
        {
            if (implemented.Name == name && implemented.ContainingNamespace.Name == "System")
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The text of an object of a source type: its own ToString, a record's, or the type's name.</summary>
    private object? ObjectText(UserObject user, IOperation at, Frame frame)
    {
        for (var type = user.Type; type is not null && types.IsSource(type); type = type.BaseType)
        {
            foreach (var member in type.GetMembers("ToString"))
            {
                if (member is IMethodSymbol { IsOverride: true, IsImplicitlyDeclared: false, Parameters.IsEmpty: true } method && bodies.Body(method.OriginalDefinition) is not null)
                {
                    return CallSource(method, user, [], at, frame);
                }
            }

            if (type.IsRecord)
            {
                break;
            }
        }

        if (user.Type.IsAnonymousType || user.Type.IsRecord)
        {
            return RecordText(user, at, frame);
        }

        return user.Type.IsGenericType
            ? Refuse(at, frame, $"the text of a '{user.Type.Name}' is not evaluated", "override ToString")
            : TypeMap.MetadataName(user.Type);
    }

    private object? RecordText(UserObject user, IOperation at, Frame frame)
    {
        var builder = new StringBuilder(user.Type.IsAnonymousType ? "{ " : user.Type.Name + " { ");
        var chain = new Stack<INamedTypeSymbol>();
        for (var type = user.Type; type is not null && (types.IsSource(type) || type.IsAnonymousType); type = type.BaseType)
        {
            chain.Push(type);
        }

        var first = true;
        foreach (var type in chain)
        {
            if (OwnPrintMembers(type) is { } print)
            {
                // It writes the members of its base types too.
                var written = new StringBuilder();
                Provenance.SetMaker(written, run);
                if (Call(print, user, [written], at, frame) is not bool any)
                {
                    return Unknown.Value;
                }

                builder = new StringBuilder(user.Type.Name + " { ").Append(written);
                first = !any;
                continue;
            }

            foreach (var member in type.GetMembers())
            {
                if (member is not (IPropertySymbol { IsStatic: false, IsIndexer: false, GetMethod: not null, IsOverride: false } or IFieldSymbol { IsStatic: false, IsImplicitlyDeclared: false }) || member.DeclaredAccessibility != Accessibility.Public)
                {
                    continue;
                }

                var value = member switch
                {
                    IPropertySymbol when user.Type.IsAnonymousType && user.Layout.TryGet(member, out var slot) => user.Slots[slot],
                    IPropertySymbol property => Call(Override(property.GetMethod!, user), user, [], at, frame),
                    _ => ReadField(user, (IFieldSymbol)member, at, frame),
                };
                if (Text(value, null, at, frame) is not string text)
                {
                    return Unknown.Value;
                }

                builder.Append(first ? "" : ", ").Append(member.Name).Append(" = ").Append(text);
                first = false;
                if (builder.Length > limits.Text)
                {
                    throw OverText(at, frame);
                }
            }
        }

        return builder.Append(first ? "}" : " }").ToString();
    }

    private static IMethodSymbol? OwnPrintMembers(INamedTypeSymbol type)
    {
        foreach (var member in type.GetMembers("PrintMembers"))
        {
            if (member is IMethodSymbol { IsImplicitlyDeclared: false } method)
            {
                return method;
            }
        }

        return null;
    }
}
