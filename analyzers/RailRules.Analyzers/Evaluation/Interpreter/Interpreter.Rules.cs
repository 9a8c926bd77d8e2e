using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <content>Calls from outside: of the team's own rules, on objects of the model.</content>
internal sealed partial class Interpreter
{
    /// <summary>Calls a static method with one argument when all static members have their values. The sequence that it gives is gone through: an array of its elements.</summary>
    public MemberResult Call(IMethodSymbol method, object argument, long spent)
    {
        while (true)
        {
            var result = CallOnce(method, argument, spent);
            if (Settle(result))
            {
                return result;
            }
        }
    }

    private MemberResult CallOnce(IMethodSymbol method, object argument, long spent)
    {
        var mine = run = new MemberRun(method, null) { Steps = spent };
        try
        {
            var raw = Guarded(method, () => Body(method, argument));
            if (raw is Unknown && !mine.HasCause && bodies.Syntax(method) is { } syntax && !bodies.HasErrors(syntax))
            {
                mine.Add(new Problem(ProblemKind.NotComputable, Place(method, syntax), InternalReason + "the result is not known, and why is not known either", "write the rule more simply, and report this as a fault of RailRules"));
            }

            return mine.Complete(raw, raw);
        }
        finally
        {
            run = null!;
        }
    }

    private object? Body(IMethodSymbol method, object argument)
    {
        var definition = (method.PartialImplementationPart ?? method).OriginalDefinition;
        if (bodies.Body(definition) is not { } body)
        {
            return Silent();
        }

        var caller = new Frame(null, new Activation(run, null, null, null, null));
        var inner = new Frame(null, new Activation(run, definition, null, null, ArgumentsOf(definition.ContainingType, definition, null)));
        Bind(definition, [argument], inner);
        var given = RunBody(body, definition, inner, body, caller);
        return given is System.Collections.IEnumerable items ? InLibrary(Untyped(items), body, caller).ToArray() : given;
    }
}
