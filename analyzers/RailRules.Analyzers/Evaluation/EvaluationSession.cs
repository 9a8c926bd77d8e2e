using System.Globalization;
using System.Runtime.ExceptionServices;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>
/// One evaluation of one compilation: static members in, model objects out. Results are kept per member. Thread-safe through one lock;
/// the work runs on threads of its own with a deep stack, since evaluated code may recurse and the host's stack is small.
/// </summary>
internal sealed class EvaluationSession
{
    private const int StackSize = 16 * 1024 * 1024;

    [ThreadStatic]
    private static EvaluationSession? current;

    private readonly object gate = new();
    private readonly Interpreter interpreter;

    private EvaluationSession(Compilation compilation, EvaluationLimits limits) => interpreter = new Interpreter(compilation, limits);

    /// <summary>A session; null where the compilation does not reference RailRules.</summary>
    public static EvaluationSession? TryCreate(Compilation compilation, EvaluationLimits? limits = null) =>
        compilation.GetTypeByMetadataName("RailRules.Rail") is { } rail && !SymbolEqualityComparer.Default.Equals(rail.ContainingAssembly, compilation.Assembly)
            ? new EvaluationSession(compilation, limits ?? new EvaluationLimits())
            : null;

    /// <summary>Evaluates a static field or property; kept per session.</summary>
    public MemberResult Evaluate(ISymbol staticMember, CancellationToken cancellation) => OnDeepStack(() =>
    {
        var before = interpreter.Cancellation;
        interpreter.Cancellation = cancellation;
        try
        {
            return interpreter.Member(staticMember);
        }
        finally
        {
            interpreter.Cancellation = before;
        }
    });

    /// <summary>Calls a static method of one parameter with an object of the model, and goes through the sequence that it gives. Not kept.</summary>
    /// <param name="method">The method.</param>
    /// <param name="argument">The object.</param>
    /// <param name="spent">Steps already spent, which count against the same budget.</param>
    /// <param name="cancellation">Stops it.</param>
    public MemberResult Call(IMethodSymbol method, object argument, long spent, CancellationToken cancellation) => OnDeepStack(() =>
    {
        var before = interpreter.Cancellation;
        interpreter.Cancellation = cancellation;
        try
        {
            return interpreter.Call(method, argument, spent);
        }
        finally
        {
            interpreter.Cancellation = before;
        }
    });

    /// <summary>Runs the work under the session's lock on a thread with a deep stack; exceptions come through.</summary>
    public T OnDeepStack<T>(Func<T> work)
    {
        if (ReferenceEquals(current, this))
        {
            return work();
        }

        lock (gate)
        {
            return OnNewThread(() =>
            {
                current = this;
                return work();
            });
        }
    }

    /// <summary>Where that datum (or, without one, the object itself) was written; with an index the element of a collection datum.</summary>
    public Origin? OriginOf(object owner, string? datum, int? index = null) => Locked(() => interpreter.OriginOf(owner, datum, index));

    /// <summary>Whether the datum was written but could not be worked out; the property then has its default in the model object.</summary>
    public bool IsUnknown(object owner, string datum) => Locked(() => interpreter.Provenance.Find(owner)?.IsUnknown(datum) ?? false);

    /// <summary>The static member whose evaluation made the object.</summary>
    public ISymbol? MadeBy(object modelObject) => Locked(() => interpreter.Provenance.Find(modelObject)?.Member);

    /// <summary>Runs the work on a new thread with a deep stack and the invariant culture, and waits for it.</summary>
    internal static T OnNewThread<T>(Func<T> work)
    {
        T result = default!;
        ExceptionDispatchInfo? failure = null;
        var thread = new Thread(
            () =>
            {
                try
                {
                    result = work();
                }
                catch (Exception exception)
                {
                    failure = ExceptionDispatchInfo.Capture(exception);
                }
            },
            StackSize)
        {
            IsBackground = true,
            Name = "RailRules evaluation",
            CurrentCulture = CultureInfo.InvariantCulture,
            CurrentUICulture = CultureInfo.InvariantCulture,
        };
        thread.Start();
        thread.Join();
        failure?.Throw();
        return result;
    }

    /// <summary>Continues the session's work on a fresh stack.</summary>
    internal static T OnFreshStack<T>(Func<T> work)
    {
        var session = current;
        return OnNewThread(() =>
        {
            current = session;
            return work();
        });
    }

    private T Locked<T>(Func<T> work)
    {
        if (ReferenceEquals(current, this))
        {
            return work();
        }

        lock (gate)
        {
            return work();
        }
    }
}
