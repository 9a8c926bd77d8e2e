using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Calls: of methods of the source, of delegates, and of listed members of libraries.</content>
internal sealed partial class Interpreter
{
    private const BindingFlags DoNotWrapExceptions = (BindingFlags)0x02000000;

    private readonly Dictionary<(INamedTypeSymbol, IMethodSymbol), IMethodSymbol?> implementations = new(OverrideComparer.Instance);

    /// <summary>The call in whose course library code runs: lambdas that it calls have it as their call site.</summary>
    private LibraryCall? libraryCall;

    private object? Invocation(IInvocationOperation operation, Frame frame)
    {
        var method = operation.TargetMethod;
        if (method.MethodKind == MethodKind.DelegateInvoke)
        {
            return InvokeDelegate(operation, frame);
        }

        if (method.MethodKind == MethodKind.LocalFunction)
        {
            return InvokeLocalFunction(operation, frame);
        }

        method = Resolve(method, frame);
        if (WithHandler(operation, method, frame) is { } handled)
        {
            return handled.Value;
        }

        if (method.IsStatic)
        {
            if (operation.ConstrainedToType is not null || (method.IsAbstract || method.IsVirtual))
            {
                if (Constrained(operation.ConstrainedToType, method, frame) is not { } found)
                {
                    return Refuse(operation, frame, "a static member of a type parameter is not evaluated", "call the type's own member");
                }

                method = found;
            }

            var arguments = Arguments(operation.Arguments, method, frame);
            return TablePart(method, arguments, operation, frame) ?? Call(method, null, arguments, operation, frame);
        }

        if (operation.Instance is not { } instance)
        {
            return Unknown.Value;
        }

        return InvokeOn(operation, instance, method, frame);
    }

    private object? InvokeOn(IInvocationOperation operation, IOperation instance, IMethodSymbol method, Frame frame)
    {
        var receiver = Receiver(instance, method, frame);
        var self = ValueOf(receiver);
        var arguments = Arguments(operation.Arguments, method, frame);
        if (self is Unknown)
        {
            if (types.IsSource(method) ? effects.Of(method) : library.Find(method).Rule.Mutates)
            {
                throw new RefusedSignal();
            }

            return self;
        }

        if (self is null && instance.Type?.OriginalDefinition.SpecialType != SpecialType.System_Nullable_T && method.ContainingType.ExtensionParameter is null)
        {
            throw Raise(new NullReferenceException(), operation, frame);
        }

        return Call(operation.IsVirtual ? Override(method, self) : method, receiver, arguments, operation, frame);
    }

    /// <summary>What a static member of an interface is on the type that stands for the type parameter.</summary>
    private IMethodSymbol? Constrained(ITypeSymbol? constrained, IMethodSymbol method, Frame frame) =>
        constrained is not null && Resolve(constrained, frame) is INamedTypeSymbol type && types.IsSource(type)
            ? type.FindImplementationForInterfaceMember(method.ConstructedFrom) is IMethodSymbol found ? found.IsGenericMethod ? found.Construct([.. method.TypeArguments]) : found : null
            : null;

    /// <summary>Calls a method with evaluated arguments; receivers of structs and by-reference arguments are locations.</summary>
    private object? Call(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame) =>
        types.IsSource(method) || (method.ContainingType is { } type && types.IsSource(type))
            ? CallSource(method, self, arguments, at, frame)
            : CallOther(method, self, arguments, at, frame);

    private object? CallOther(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        var value = self is Storage location ? location.Get() : self;
        return value is UserObject or UserEnum ? CallInherited(method, value, arguments, at, frame) : CallLibrary(method, value, arguments, at, frame);
    }

    private object?[] Arguments(System.Collections.Immutable.ImmutableArray<IArgumentOperation> given, IMethodSymbol method, Frame frame)
    {
        if (given.IsEmpty)
        {
            return [];
        }

        var values = new object?[method.Parameters.Length];
        foreach (var argument in given)
        {
            if (argument.Parameter is not { } parameter || parameter.Ordinal >= values.Length)
            {
                continue;
            }

            if (parameter.RefKind is RefKind.Ref or RefKind.Out)
            {
                values[parameter.Ordinal] = Reference(argument.Value, frame);
            }
            else if (parameter.RefKind != RefKind.None && types.IsSource(method) && IsVariable(argument.Value, frame, orReadOnly: true))
            {
                // What is passed in by reference shows changes made to it meanwhile.
                values[parameter.Ordinal] = Reference(argument.Value, frame);
            }
            else
            {
                var value = Evaluate(argument.Value, frame);
                if (argument.InConversion is { Exists: true, IsIdentity: false, MethodSymbol: { } conversion })
                {
                    value = CallOperator(conversion, [value], argument, frame);
                }

                values[parameter.Ordinal] = value;
            }
        }

        return values;
    }

    /// <summary>Calls a method of the source.</summary>
    private object? CallSource(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        if (method.IsStatic && bodies.ExtensionMember(method.OriginalDefinition) is { } extension)
        {
            return method.IsGenericMethod || extension.IsStatic || extension.ContainingType.IsGenericType
                ? Refuse(at, frame, "this call of an extension member is not evaluated", "call it as a member")
                : CallSource(extension, arguments[0], arguments.Skip(1).ToArray(), at, frame);
        }

        var body = bodies.Body(method.OriginalDefinition);
        if (body is null)
        {
            return CallWithoutBody(method, self, arguments, at, frame);
        }

        if (method.IsAsync)
        {
            return Refuse(at, frame, "asynchronous code is not evaluated", "write a plain method");
        }

        // A struct that comes as itself and not as its place lies in a box: what changes there would be seen by all who hold the box.
        var extended = method.ContainingType.ExtensionParameter;
        if (extended is null && !method.IsStatic && self is UserObject { Type.IsValueType: true } boxed)
        {
            self = new Place(() => boxed, _ => RefuseBox(at, frame));
        }

        var site = new Origin(at.Syntax, frame.Activation.Site, run.Member);
        var activation = new Activation(run, method, self, site, ArgumentsOf(method.ContainingType, method, null));
        var inner = new Frame(null, activation);
        var definition = (method.PartialImplementationPart ?? method).OriginalDefinition;
        definition = definition.PartialImplementationPart ?? definition;
        if (extended is not null && !definition.IsStatic)
        {
            inner.Declare(definition.ContainingType.ExtensionParameter!, extended.RefKind == RefKind.None ? ValueOf(self) : self);
        }

        Bind(definition, arguments, inner);
        return RunBody(body, definition, inner, at, frame);
    }

    private void RefuseBox(IOperation at, Frame frame)
    {
        Refuse(at, frame, "this changes a struct in its box", "use a class, or call the method on a variable of the struct's own type");
        throw new RefusedSignal();
    }

    private void Bind(IMethodSymbol definition, object?[] arguments, Frame inner)
    {
        var parameters = definition.Parameters;
        for (var i = 0; i < parameters.Length; i++)
        {
            inner.Declare(parameters[i], i < arguments.Length ? arguments[i] : Unknown.Value);
        }
    }

    private object? RunBody(IOperation body, IMethodSymbol definition, Frame inner, IOperation at, Frame caller)
    {
        if (definition.ReturnType is not null && !definition.ReturnsVoid && effects.IsIterator(definition))
        {
            return Iterator(body, definition, inner, at, caller);
        }

        Enter(at, caller);
        try
        {
            Execute(body, inner);
            return inner.Activation.Result;
        }
        catch (UndecidedSignal) when (!effects.Of(definition))
        {
            return Unknown.Value;
        }
        finally
        {
            Leave();
        }
    }

    private void Enter(IOperation at, Frame frame)
    {
        RuntimeHelpers.EnsureSufficientExecutionStack();
        stackDepth++;
        if (++run.Depth > limits.Depth)
        {
            run.Depth--;
            stackDepth--;
            throw OverBudget(at, frame, $"calls are nested deeper than {limits.Depth}", "write a loop instead of a recursion, or the value itself");
        }
    }

    private void Leave()
    {
        run.Depth--;
        stackDepth--;
    }

    /// <summary>The method that a virtual or interface call reaches on an object of the source.</summary>
    private IMethodSymbol Override(IMethodSymbol method, object? self)
    {
        if (self is not UserObject user || !(method.IsVirtual || method.IsAbstract || method.IsOverride || method.ContainingType.TypeKind == TypeKind.Interface))
        {
            return method;
        }

        if (!implementations.TryGetValue((user.Type, method), out var found))
        {
            implementations[(user.Type, method)] = found = FindOverride(user.Type, method);
        }

        return found ?? method;
    }

    private static IMethodSymbol? FindOverride(INamedTypeSymbol type, IMethodSymbol method)
    {
        if (method.ContainingType.TypeKind == TypeKind.Interface)
        {
            if (type.FindImplementationForInterfaceMember(method.ConstructedFrom) is not IMethodSymbol implementation)
            {
                return null;
            }

            return implementation.ContainingType.TypeKind == TypeKind.Interface || !(implementation.IsVirtual || implementation.IsAbstract || implementation.IsOverride)
                ? implementation.IsGenericMethod ? implementation.Construct([.. method.TypeArguments]) : implementation
                : FindOverride(type, implementation.IsGenericMethod ? implementation.Construct([.. method.TypeArguments]) : implementation) ?? implementation;
        }

        for (var at = type; at is not null; at = at.BaseType)
        {
            foreach (var member in at.GetMembers(method.Name))
            {
                if (member is not IMethodSymbol candidate)
                {
                    continue;
                }

                for (var overridden = candidate; overridden is not null; overridden = overridden.OverriddenMethod)
                {
                    if (SymbolEqualityComparer.Default.Equals(overridden.OriginalDefinition, method.OriginalDefinition))
                    {
                        return candidate.IsGenericMethod ? candidate.Construct([.. method.TypeArguments]) : candidate;
                    }
                }
            }
        }

        return null;
    }

    /// <summary>Calls a listed member of a library; refuses any other.</summary>
    private object? CallLibrary(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        if (method.ContainingType is { } containing && TypeMap.IsSpan(containing))
        {
            return OnSpan(method, self, arguments, at, frame);
        }

        if (types.Find(method.ContainingType!) is { } place && (place == typeof(IndexValue) || place == typeof(RangeValue)))
        {
            return OnIndex(method, self, arguments, at, frame);
        }

        foreach (var argument in arguments)
        {
            if (IsOrderedByHash(argument))
            {
                return Refuse(at, frame, "the order of its elements depends on hash codes", "use a dictionary, a list or an array");
            }
        }

        var member = library.Find(method);
        if (member.Method is not { } target)
        {
            // By unknown operands the value is unknown anyway, and the cause is told already.
            return HasUnknown(arguments) ? Unknown.Value : Refuse(at, frame, member.Refusal!, member.Remedy);
        }

        if (HasUnknown(arguments))
        {
            return member.Rule.Mutates && !target.IsConstructor ? throw new RefusedSignal() : Unknown.Value;
        }

        if (!target.IsStatic && !target.IsConstructor && self is null)
        {
            return OnNullable(method, arguments, at, frame);
        }

        if (member.Rule.Mutates && self is not null && !Provenance.IsMadeBy(self, run))
        {
            return RefuseMutation(self, at, frame);
        }

        if (member.Rule.Cost == Cost.Linear)
        {
            Charge(Size(self) + Sizes(arguments), at, frame);
        }

        if (Provenance.AnyUnknown && Compares(target) && (HoldsUnknown(self, []) || Array.Exists(arguments, argument => HoldsUnknown(argument, []))))
        {
            run.HasCause = true; // told where the datum is
            return member.Rule.Mutates ? throw new RefusedSignal() : Unknown.Value;
        }

        if (Special(method, target, self, arguments, at, frame) is { } special)
        {
            return special.Value;
        }

        if (member.Guard?.Invoke(self, arguments, limits) is { } objection)
        {
            return objection.IsBudget ? throw OverBudget(at, frame, objection.Reason, objection.Remedy) : Refuse(at, frame, objection.Reason, objection.Remedy);
        }

        var given = Given(member, method, arguments, at, frame);
        return given is null ? Refuse(at, frame, $"'{LibraryMembers.DisplayName(method)}' is not evaluated for objects of this type", "give it values of the library's types") : Invoke(member, target, method, self, arguments, given, at, frame);
    }

    private object? RefuseMutation(object self, IOperation at, Frame frame)
    {
        Refuse(at, frame, $"this changes {(Provenance.IsMade(self) ? "an object that another static member made" : "an object whose maker is not known")}; objects do not change once the member that made them has its value", "make a new object");
        throw new RefusedSignal();
    }

    private object? Invoke(LibraryMember member, MethodBase target, IMethodSymbol method, object? self, object?[] arguments, object?[] given, IOperation at, Frame frame)
    {
        var origin = new Origin(at.Syntax, frame.Activation.Site, run.Member);
        var outer = libraryCall;
        libraryCall = new LibraryCall(at, frame, origin);
        Exception raised;
        try
        {
            var result = target is ConstructorInfo constructor
                ? constructor.Invoke(DoNotWrapExceptions, null, given, null)
                : target.Invoke(self, DoNotWrapExceptions, null, given, null);
            GiveBack(method, arguments, given);
            return Accept(result, member, method, self, arguments, origin, at, frame);
        }
        catch (UnknownSignal unknown)
        {
            return unknown.Effects ? throw new RefusedSignal() : Unknown.Value;
        }
        catch (Exception exception) when (exception is not Signal and not OperationCanceledException and not InsufficientExecutionStackException)
        {
            raised = exception is TargetInvocationException { InnerException: { } inner } ? inner : exception;
        }
        finally
        {
            libraryCall = outer;
        }

        if (raised is Signal signal)
        {
            throw signal;
        }

        throw raised is OutOfMemoryException
            ? OverBudget(at, frame, "this needs more memory than there is", "use fewer elements or a shorter text")
            : new ThrowSignal(raised.GetType().FullName!, raised.Message, origin);
    }

    /// <summary>The arguments as the library takes them; null where it cannot take one.</summary>
    private object?[]? Given(LibraryMember member, IMethodSymbol method, object?[] arguments, IOperation at, Frame frame)
    {
        var given = arguments;
        for (var i = 0; i < arguments.Length; i++)
        {
            if (arguments[i] is UserObject or IndexValue or RangeValue && i < member.Parameters.Length)
            {
                var adapted = Adapted(arguments[i]!, member.Parameters[i], at, frame);
                if (adapted is null)
                {
                    return null;
                }

                if (!ReferenceEquals(adapted, arguments[i]))
                {
                    given = ReferenceEquals(given, arguments) ? (object?[])arguments.Clone() : given;
                    given[i] = adapted;
                }
            }
        }

        for (var i = 0; i < arguments.Length; i++)
        {
            if (arguments[i] is Storage location)
            {
                given = ReferenceEquals(given, arguments) ? (object?[])arguments.Clone() : given;
                given[i] = method.Parameters[i].RefKind == RefKind.Out ? null : location.Get();
            }
        }

        return given;
    }

    private void GiveBack(IMethodSymbol method, object?[] arguments, object?[] given)
    {
        for (var i = 0; i < arguments.Length; i++)
        {
            if (arguments[i] is Storage location)
            {
                location.Set(Normalised(given[i], method.Parameters[i].Type));
            }
        }
    }

    /// <summary>Takes a library's result over: its size, its maker, where it was made.</summary>
    private object? Accept(object? result, LibraryMember member, IMethodSymbol method, object? self, object?[] arguments, Origin origin, IOperation at, Frame frame)
    {
        if (result is string text)
        {
            return text.Length > limits.Text ? throw OverText(at, frame) : text;
        }

        if (member.ReturnsSourceValue)
        {
            result = Normalised(result, method.MethodKind == MethodKind.Constructor ? method.ContainingType : method.ReturnType);
        }

        if (result is null or ValueType)
        {
            return result;
        }

        if (member.ReturnsModel || (method.ReturnType.TypeKind == TypeKind.TypeParameter && result.GetType().Assembly == typeof(Rail).Assembly))
        {
            Provenance.Enter(result, origin);
            return result;
        }

        if (member.ReturnsSequence)
        {
            return arguments.Length > 0 && ReferenceEquals(result, arguments[0]) ? result : Metered(result, at, frame);
        }

        if (result is IEnumerable or IEnumerator or System.Text.StringBuilder)
        {
            Provenance.SetMaker(result, run);
        }

        return result;
    }

    private object Metered(object sequence, IOperation at, Frame frame)
    {
        foreach (var implemented in sequence.GetType().GetInterfaces())
        {
            if (implemented.IsGenericType && implemented.GetGenericTypeDefinition() == typeof(IEnumerable<>))
            {
                return Sequences.Of(implemented.GetGenericArguments()[0]).Metered(sequence, () => Step(at, frame));
            }
        }

        return sequence;
    }

    private static bool HasUnknown(object?[] values)
    {
        foreach (var value in values)
        {
            if (value is Unknown)
            {
                return true;
            }
        }

        return false;
    }

    private static long Sizes(object?[] arguments)
    {
        long size = 0;
        foreach (var argument in arguments)
        {
            size += Size(argument);
        }

        return size;
    }

    private static long Size(object? value) => value switch
    {
        null => 0,
        string text => text.Length / 16,
        Array array => array.Length,
        System.Text.StringBuilder builder => builder.Length / 16,
        ICollection collection when value is not ValueType => collection.Count,
        ValueType and IEnumerable when value.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(System.Collections.Immutable.ImmutableArray<>) =>
            Sequences.Of(type.GetGenericArguments()[0]).Underlying(value)?.Length ?? 0,
        _ => 0,
    };

    /// <summary>Members of a nullable value type on a value that is not there.</summary>
    private object? OnNullable(IMethodSymbol method, object?[] arguments, IOperation at, Frame frame)
    {
        if (method.ContainingType.OriginalDefinition.SpecialType != SpecialType.System_Nullable_T)
        {
            throw Raise(new NullReferenceException(), at, frame);
        }

        switch (method.Name)
        {
            case "get_HasValue":
                return false;
            case "get_Value":
                throw Raise(NoValue(), at, frame);
            case "GetValueOrDefault":
                return arguments.Length == 1 ? arguments[0] : Default(method.ContainingType.TypeArguments[0]);
            case "ToString":
                return "";
            case "Equals":
                return arguments[0] is null;
            default:
                return Refuse(at, frame, $"'Nullable.{method.Name}' is not evaluated", "write the value itself");
        }
    }

    private sealed class LibraryCall(IOperation at, Frame frame, Origin origin)
    {
        public IOperation At { get; } = at;

        public Frame Frame { get; } = frame;

        public Origin Origin { get; } = origin;
    }

    private sealed class OverrideComparer : IEqualityComparer<(INamedTypeSymbol Type, IMethodSymbol Method)>
    {
        public static readonly OverrideComparer Instance = new();

        public bool Equals((INamedTypeSymbol Type, IMethodSymbol Method) x, (INamedTypeSymbol Type, IMethodSymbol Method) y) =>
            SymbolEqualityComparer.Default.Equals(x.Type, y.Type) && SymbolEqualityComparer.Default.Equals(x.Method, y.Method);

        public int GetHashCode((INamedTypeSymbol Type, IMethodSymbol Method) obj) =>
            unchecked((SymbolEqualityComparer.Default.GetHashCode(obj.Type) * 397) ^ SymbolEqualityComparer.Default.GetHashCode(obj.Method));
    }
}
