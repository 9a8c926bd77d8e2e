using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RailRules.Analyzers.Evaluation;

/// <content>Static members: lazy, kept, and read in the order in which C# would have given them values.</content>
internal sealed partial class Interpreter
{
    private const int DepthOfOneStack = 150;

    private readonly Dictionary<ISymbol, MemberResult> results = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<INamedTypeSymbol, bool> staticConstructors = new(SymbolEqualityComparer.Default);
    private int stackDepth;

    /// <summary>Evaluates a static field or property, or gives its kept result.</summary>
    public MemberResult Member(ISymbol member)
    {
        if (results.TryGetValue(member, out var kept))
        {
            return kept;
        }

        if (stackDepth > DepthOfOneStack)
        {
            var depth = stackDepth;
            stackDepth = 0;
            try
            {
                return EvaluationSession.OnFreshStack(() => Member(member));
            }
            finally
            {
                stackDepth = depth;
            }
        }

        var outer = run;
        var mine = new MemberRun(member, outer);
        run = mine;
        stackDepth++;
        var completed = false;
        try
        {
            var result = mine.Complete(Guarded(member));
            completed = true;
            results[member] = result;
            return result;
        }
        finally
        {
            mine.Running = completed && false;
            stackDepth--;
            run = outer!;
        }
    }

    private object? Guarded(ISymbol member)
    {
        var syntax = bodies.Syntax(member);
        try
        {
            return MemberValue(member, syntax);
        }
        catch (ThrowSignal thrown)
        {
            run.Add(new Problem(ProblemKind.Throws, thrown.Origin, $"this throws {ShortName(thrown.Type)}: {thrown.Text}", "correct the value that makes it throw"));
            return Unknown.Value;
        }
        catch (Signal)
        {
            return Unknown.Value;
        }
        catch (InsufficientExecutionStackException)
        {
            run.Add(new Problem(ProblemKind.Budget, Place(member, syntax), "calls or expressions are nested too deeply", "write the value itself, or use a loop"));
            return Unknown.Value;
        }
        catch (OperationCanceledException)
        {
            throw;
        }
        catch (Exception exception)
        {
            // Half-typed code makes shapes of operations that no valid program has; the compiler reports it.
            if (syntax is null || !bodies.HasErrors(syntax))
            {
                run.Add(new Problem(ProblemKind.NotComputable, Place(member, syntax), InternalReason + exception.GetType().Name + " " + exception.Message, "write the value itself, and report this as a fault of RailRules"));
            }

            return Unknown.Value;
        }
    }

    private object? MemberValue(ISymbol member, SyntaxNode? syntax)
    {
        if (syntax is null)
        {
            run.Add(new Problem(ProblemKind.ForeignValue, Place(member, syntax), $"'{member.ContainingType?.Name}.{member.Name}' is a value of another assembly", "declare the value in this project"));
            return Unknown.Value;
        }

        var frame = new Frame(null, new Activation(null, null, null, null));
        if (bodies.Initialiser(member) is { } initialiser)
        {
            return Evaluate(initialiser, frame);
        }

        return Unknown.Value;
    }

    private object? Evaluate(IOperation operation, Frame frame)
    {
        Step(operation, frame);
        return operation.ConstantValue is { HasValue: true, Value: var constant }
            ? constant
            : Refuse(operation, frame, $"{operation.Kind} is not evaluated", "write the value itself");
    }

    public Origin? OriginOf(object owner, string? datum, int? index)
    {
        var record = Provenance.Find(owner);
        return datum is null ? record?.Created : record?[datum] ?? record?.Created;
    }

    private static string ShortName(string type) => type.Substring(type.LastIndexOf('.') + 1);

    private Origin Place(ISymbol member, SyntaxNode? syntax)
    {
        var node = syntax switch
        {
            VariableDeclaratorSyntax { Initializer: { } clause } => clause.Value,
            PropertyDeclarationSyntax { Initializer: { } clause } => clause.Value,
            PropertyDeclarationSyntax { ExpressionBody: { } arrow } => arrow.Expression,
            null => member.DeclaringSyntaxReferences.Length > 0 ? member.DeclaringSyntaxReferences[0].GetSyntax() : compilation.SyntaxTrees.First().GetRoot(),
            _ => syntax,
        };
        return new Origin(node, null, member);
    }

    private long ExactReadSteps(MemberRun of)
    {
        long sum = 0;
        var reached = new HashSet<ISymbol>(SymbolEqualityComparer.Default);
        var open = new Stack<ISymbol>(of.Reads);
        while (open.Count > 0)
        {
            var member = open.Pop();
            if (reached.Add(member) && results.TryGetValue(member, out var result))
            {
                sum += result.Steps;
                foreach (var read in result.Reads)
                {
                    open.Push(read);
                }
            }
        }

        return sum;
    }
}
