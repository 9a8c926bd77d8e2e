using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Lambdas, method groups and local functions, as real delegates that library code can call.</content>
internal sealed partial class Interpreter
{
    private object? DelegateCreation(IDelegateCreationOperation operation, Frame frame)
    {
        if (TypeOf(operation, frame) is not INamedTypeSymbol type)
        {
            return Unknown.Value;
        }

        switch (operation.Target)
        {
            case IAnonymousFunctionOperation lambda:
                if (lambda.Symbol.IsAsync)
                {
                    return Refuse(operation, frame, "asynchronous code is not evaluated", "write a plain method");
                }

                return MakeDelegate(new Closure(this, lambda.Symbol, null, frame, lambda.Body, SiteOf(operation, frame), run) { Anchor = operation }, type, operation, frame);
            case IMethodReferenceOperation reference:
                return MethodGroup(reference, type, operation, frame);
            case IInvalidOperation:
                return Unknown.Value;
            default:
                return Evaluate(operation.Target, frame);
        }
    }

    /// <summary>The call to which a lambda is given: the place from which library code calls it, as people see it.</summary>
    private Origin SiteOf(IOperation operation, Frame frame)
    {
        var at = operation.Parent;
        while (at is IConversionOperation or IArgumentOperation or IDelegateCreationOperation)
        {
            at = at.Parent;
        }

        return OriginAt(at is IInvocationOperation or IObjectCreationOperation ? at : operation, frame);
    }

    private object? MethodGroup(IMethodReferenceOperation reference, INamedTypeSymbol type, IDelegateCreationOperation operation, Frame frame)
    {
        var method = Resolve(reference.Method, frame);
        var self = reference.Instance is { } instance ? Evaluate(instance, frame) : null;
        if (self is Unknown)
        {
            return self;
        }

        if (!method.IsStatic && self is null && method.MethodKind != MethodKind.LocalFunction)
        {
            throw Raise(method.ReducedFrom is null ? new ArgumentException("Delegate to an instance method cannot have null 'this'.") : new NullReferenceException(), operation, frame);
        }

        if (method.MethodKind == MethodKind.LocalFunction)
        {
            return FindLocalFunction(method, frame) is { } local
                ? MakeDelegate(new Closure(this, method, null, local.Frame, local.Body, SiteOf(operation, frame), run) { Anchor = operation }, type, operation, frame)
                : Unknown.Value;
        }

        if (!types.IsSource(method) && library.Find(method) is { Method: null } member)
        {
            return Refuse(operation, frame, member.Refusal!, member.Remedy);
        }

        return MakeDelegate(new Closure(this, Override(method, self), self, frame, null, SiteOf(operation, frame), run) { Anchor = operation }, type, operation, frame);
    }

    private object? MakeDelegate(Closure closure, INamedTypeSymbol type, IOperation at, Frame frame)
    {
        if (types.Find(type) is not { } real || !typeof(Delegate).IsAssignableFrom(real) || real.IsAbstract || real.GetMethod("Invoke") is not { } invoke)
        {
            return Refuse(at, frame, $"delegates of type '{type.ToDisplayString()}' are not evaluated", "use Func or Action");
        }

        return Thunks.Make(real, invoke, closure) ?? (object)Refuse(at, frame, $"delegates of type '{type.ToDisplayString()}' are not evaluated", "use Func or Action with at most eight parameters");
    }

    private object? InvokeDelegate(IInvocationOperation operation, Frame frame)
    {
        if (operation.Instance is not { } instance)
        {
            return Unknown.Value;
        }

        var target = Evaluate(instance, frame);
        var arguments = Arguments(operation.Arguments, operation.TargetMethod, frame);
        switch (target)
        {
            case Unknown:
                throw new RefusedSignal();
            case null:
                throw Raise(new NullReferenceException(), operation, frame);
            case Delegate called when Thunks.ClosureOf(called) is { } closure:
                return closure.Run(arguments, OriginAt(operation, frame), operation, frame);
            default:
                return Refuse(operation, frame, "this delegate is not evaluated", "call a method");
        }
    }

    private object? InvokeLocalFunction(IInvocationOperation operation, Frame frame)
    {
        var method = operation.TargetMethod;
        var arguments = Arguments(operation.Arguments, method, frame);
        if (FindLocalFunction(method, frame) is not { } found)
        {
            return Refuse(operation, frame, $"'{method.Name}' is not evaluated", "write a method");
        }

        return RunFunction(method, found.Body, found.Frame, arguments, OriginAt(operation, frame), operation, frame);
    }

    private LocalFunction? FindLocalFunction(IMethodSymbol method, Frame frame) =>
        frame.TryFind(method.OriginalDefinition, out var holder, out var index) ? holder[index] as LocalFunction : null;

    /// <summary>Runs a lambda or local function in the block where it stands.</summary>
    internal object? RunFunction(IMethodSymbol method, IOperation body, Frame lexical, object?[] arguments, Origin site, IOperation at, Frame caller)
    {
        if (method.IsAsync)
        {
            return Refuse(at, caller, "asynchronous code is not evaluated", "write a plain method");
        }

        var activation = new Activation(run, method, lexical.Activation.Self, site, ArgumentsOf(null, method, lexical.Activation.TypeArguments));
        var inner = new Frame(lexical, activation);

        Bind(method.OriginalDefinition, arguments, inner);
        return RunBody(body, method.OriginalDefinition, inner, at, caller);
    }

    /// <summary>Calls what a closure stands for.</summary>
    internal object? RunClosure(Closure closure, object?[] arguments, Origin site, IOperation at, Frame caller) =>
        closure.Body is { } body
            ? RunFunction(closure.Method, body, closure.Frame, arguments, site, at, caller)
            : Call(closure.Method, closure.Self, closure.Self is not null && closure.Method.IsStatic ? [closure.Self, .. arguments] : arguments, at, caller);

    /// <summary>A call by library code.</summary>
    internal object? CallFromLibrary(Closure closure, object?[] arguments)
    {
        if (run is null)
        {
            throw new InvalidOperationException("A lambda of evaluated code is called outside its evaluation.");
        }

        var site = ReferenceEquals(closure.MadeIn, run) || libraryCall is null ? closure.Site : libraryCall.Origin;
        var at = closure.Body ?? bodies.Body(closure.Method.OriginalDefinition);
        var parameters = closure.Method.Parameters;
        for (var i = 0; i < arguments.Length && i < parameters.Length; i++)
        {
            arguments[i] = Normalised(arguments[i], Resolve(parameters[i].Type, closure.Frame));
        }

        var caller = new Frame(null, new Activation(run, null, null, site, closure.Frame.Activation.TypeArguments));
        var result = RunClosure(closure, arguments, site, at ?? closure.Anchor, caller);
        return result is Unknown ? throw new UnknownSignal(at is not null && effects.Has(at)) : result;
    }
}

/// <summary>A local function with the block that declares it.</summary>
internal sealed class LocalFunction(IOperation body, Frame frame)
{
    public IOperation Body { get; } = body;

    public Frame Frame { get; } = frame;
}

/// <summary>What an evaluated delegate calls.</summary>
internal sealed class Closure(Interpreter interpreter, IMethodSymbol method, object? self, Frame frame, IOperation? body, Origin site, MemberRun madeIn)
{
    public IMethodSymbol Method { get; } = method;

    public object? Self { get; } = self;

    public Frame Frame { get; } = frame;

    /// <summary>The body of a lambda or local function; null for other methods.</summary>
    public IOperation? Body { get; } = body;

    /// <summary>Where the delegate was made or given to library code.</summary>
    public Origin Site { get; } = site;

    public MemberRun MadeIn { get; } = madeIn;

    /// <summary>An operation to stand for the call where the closure calls a library's method.</summary>
    public IOperation Anchor { get; init; } = null!;

    public object? Run(object?[] arguments, Origin at, IOperation operation, Frame caller) => interpreter.RunClosure(this, arguments, at, operation, caller);

    public object? Call(object?[] arguments) => interpreter.CallFromLibrary(this, arguments);
}

/// <summary>Delegates of any shape that call closures.</summary>
internal static class Thunks
{
    private static readonly Type[] Functions = [typeof(Function<>), typeof(Function<,>), typeof(Function<,,>), typeof(Function<,,,>), typeof(Function<,,,,>), typeof(Function<,,,,,>), typeof(Function<,,,,,,>), typeof(Function<,,,,,,,>), typeof(Function<,,,,,,,,>)];

    /// <summary>A delegate of the type; null where it has a shape that cannot be made.</summary>
    public static Delegate? Make(Type type, MethodInfo invoke, Closure closure)
    {
        var parameters = invoke.GetParameters();
        if (parameters.Length >= Functions.Length)
        {
            return null;
        }

        var types = new Type[parameters.Length + 1];
        for (var i = 0; i < parameters.Length; i++)
        {
            if (parameters[i].ParameterType.IsByRef)
            {
                return null;
            }

            types[i] = parameters[i].ParameterType;
        }

        var returnsNothing = invoke.ReturnType == typeof(void);
        types[parameters.Length] = returnsNothing ? typeof(object) : invoke.ReturnType;
        var thunk = Activator.CreateInstance(Functions[parameters.Length].MakeGenericType(types), closure)!;
        return Delegate.CreateDelegate(type, thunk, returnsNothing ? "Do" : "Get");
    }

    public static Closure? ClosureOf(Delegate called) => called.Target is Thunk thunk && called.GetInvocationList().Length == 1 ? thunk.Closure : null;

    private abstract class Thunk(Closure closure)
    {
        public Closure Closure { get; } = closure;
    }

    private sealed class Function<TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get() => (TResult)Closure.Call([])!;

        public void Do() => Closure.Call([]);
    }

    private sealed class Function<T1, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a) => (TResult)Closure.Call([a])!;

        public void Do(T1 a) => Closure.Call([a]);
    }

    private sealed class Function<T1, T2, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b) => (TResult)Closure.Call([a, b])!;

        public void Do(T1 a, T2 b) => Closure.Call([a, b]);
    }

    private sealed class Function<T1, T2, T3, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b, T3 c) => (TResult)Closure.Call([a, b, c])!;

        public void Do(T1 a, T2 b, T3 c) => Closure.Call([a, b, c]);
    }

    private sealed class Function<T1, T2, T3, T4, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b, T3 c, T4 d) => (TResult)Closure.Call([a, b, c, d])!;

        public void Do(T1 a, T2 b, T3 c, T4 d) => Closure.Call([a, b, c, d]);
    }

    private sealed class Function<T1, T2, T3, T4, T5, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b, T3 c, T4 d, T5 e) => (TResult)Closure.Call([a, b, c, d, e])!;

        public void Do(T1 a, T2 b, T3 c, T4 d, T5 e) => Closure.Call([a, b, c, d, e]);
    }

    private sealed class Function<T1, T2, T3, T4, T5, T6, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b, T3 c, T4 d, T5 e, T6 f) => (TResult)Closure.Call([a, b, c, d, e, f])!;

        public void Do(T1 a, T2 b, T3 c, T4 d, T5 e, T6 f) => Closure.Call([a, b, c, d, e, f]);
    }

    private sealed class Function<T1, T2, T3, T4, T5, T6, T7, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b, T3 c, T4 d, T5 e, T6 f, T7 g) => (TResult)Closure.Call([a, b, c, d, e, f, g])!;

        public void Do(T1 a, T2 b, T3 c, T4 d, T5 e, T6 f, T7 g) => Closure.Call([a, b, c, d, e, f, g]);
    }

    private sealed class Function<T1, T2, T3, T4, T5, T6, T7, T8, TResult>(Closure closure) : Thunk(closure)
    {
        public TResult Get(T1 a, T2 b, T3 c, T4 d, T5 e, T6 f, T7 g, T8 h) => (TResult)Closure.Call([a, b, c, d, e, f, g, h])!;

        public void Do(T1 a, T2 b, T3 c, T4 d, T5 e, T6 f, T7 g, T8 h) => Closure.Call([a, b, c, d, e, f, g, h]);
    }
}
