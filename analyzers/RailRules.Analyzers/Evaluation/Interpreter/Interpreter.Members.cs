using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RailRules.Analyzers.Evaluation;

/// <content>Static members: lazy, kept, and read in the order in which C# would have given them values.</content>
internal sealed partial class Interpreter
{
    private const int DepthOfOneStack = 150;

    /// <summary>Statics whose evaluation waits for other statics, at most.</summary>
    private const int DeepestStatics = 5000;

    private readonly Dictionary<ISymbol, MemberResult> results = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<INamedTypeSymbol, bool> staticConstructors = new(SymbolEqualityComparer.Default);
    private int stackDepth;
    private int memberDepth;

    /// <summary>Evaluates a static field or property, or gives its kept result.</summary>
    public MemberResult Member(ISymbol member)
    {
        var result = Evaluated(member);
        while (run is null && !Settle(result))
        {
            result = Evaluated(member);
        }

        return result;
    }

    private MemberResult Evaluated(ISymbol member)
    {
        if (results.TryGetValue(member, out var kept))
        {
            return kept;
        }

        if (memberDepth > DeepestStatics)
        {
            throw new InsufficientExecutionStackException();
        }

        if (stackDepth + (run?.Depth ?? 0) > DepthOfOneStack)
        {
            var depth = stackDepth;
            stackDepth = 0;
            try
            {
                return EvaluationSession.OnFreshStack(() => Evaluated(member));
            }
            finally
            {
                stackDepth = depth;
            }
        }

        var outer = run;
        var outerCall = libraryCall;
        libraryCall = null;
        var mine = new MemberRun(member, outer);
        run = mine;
        stackDepth++;
        memberDepth++;
        try
        {
            var raw = Guarded(member, () => MemberValue(member, bodies.Syntax(member)));
            var value = raw is ILazySequence { HoldsObjects: true } lazy ? Guarded(member, () => WalkThrough(lazy, member)) : raw;
            if (value is Unknown && !mine.HasCause && bodies.Syntax(member) is { } syntax && !bodies.HasErrors(syntax))
            {
                mine.Add(new Problem(ProblemKind.NotComputable, Place(member, syntax), InternalReason + "the value is not known, and why is not known either", "write the value itself, and report this as a fault of RailRules"));
            }

            var result = mine.Complete(value, raw);
            results[member] = result;
            return result;
        }
        finally
        {
            stackDepth--;
            memberDepth--;
            run = outer!;
            libraryCall = outerCall;
        }
    }

    /// <summary>The elements of a sequence that no one may ever go through in the program, but whose rails are the board's.</summary>
    private object WalkThrough(ILazySequence lazy, ISymbol member)
    {
        var frame = new Frame(null, new Activation(run, null, null, null, null));
        return bodies.Initialiser(member) is { } at ? InLibrary(lazy.Walk, at, frame) : lazy.Walk();
    }

    private object? Guarded(ISymbol member, Func<object?> work)
    {
        var syntax = bodies.Syntax(member);
        try
        {
            return work();
        }
        catch (ThrowSignal thrown)
        {
            run.HasCause = true;
            run.Add(new Problem(ProblemKind.Throws, thrown.Origin, $"this throws {ShortName(thrown.Type)}: {thrown.Text}", "correct the value that makes it throw"));
            return Unknown.Value;
        }
        catch (Signal)
        {
            return Unknown.Value;
        }
        catch (InsufficientExecutionStackException)
        {
            run.HasCause = true;
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
            run.HasCause = true;
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
            run.HasCause = true;
            run.Add(new Problem(ProblemKind.ForeignValue, Place(member, syntax), $"'{member.ContainingType?.Name}.{member.Name}' is a value of another assembly", "declare the value in this project"));
            return Unknown.Value;
        }

        var frame = new Frame(null, new Activation(run, null, null, null, ArgumentsOf(member.ContainingType, null, null)));
        switch (member)
        {
            case IFieldSymbol { HasConstantValue: true } constant:
                return constant.Type.TypeKind == TypeKind.Enum ? EnumValue(constant.Type, constant.ConstantValue!) : constant.ConstantValue;
            case IFieldSymbol field:
                return HasStaticConstructor(field.ContainingType) ? RefuseMember(member, syntax) : Initial(field, field.Type, frame);
            case IPropertySymbol property when IsAutomatic(property):
                return HasStaticConstructor(property.ContainingType) ? RefuseMember(member, syntax) : Initial(property, property.Type, frame);
            case IPropertySymbol { GetMethod: { } getter, Parameters.IsEmpty: true }:
                Execute(bodies.Body(getter.OriginalDefinition)!, frame);
                return frame.Activation.Result;
            default:
                return Unknown.Value;
        }
    }

    private object? Initial(ISymbol member, ITypeSymbol type, Frame frame)
    {
        if (bodies.Initialiser(member) is { } initialiser)
        {
            return Evaluate(initialiser, frame);
        }

        return Default(Resolve(type, frame));
    }

    private Unknown RefuseMember(ISymbol member, SyntaxNode syntax)
    {
        run.HasCause = true;
        run.Add(new Problem(ProblemKind.NotComputable, Place(member, syntax), $"'{member.ContainingType.Name}' has a static constructor, which is not evaluated", "write initialisers instead"));
        return Unknown.Value;
    }

    private bool HasStaticConstructor(INamedTypeSymbol type)
    {
        type = type.OriginalDefinition;
        if (!staticConstructors.TryGetValue(type, out var has))
        {
            has = false;
            foreach (var constructor in type.StaticConstructors)
            {
                has |= !constructor.IsImplicitlyDeclared;
            }

            staticConstructors[type] = has;
        }

        return has;
    }

    /// <summary>Reads a static field or automatic property.</summary>
    private object? ReadStatic(ISymbol member, IOperation at, Frame frame)
    {
        if (types.Kind(member.ContainingAssembly) != AssemblyKind.Source)
        {
            return ForeignStatic(member, at, frame);
        }

        if (member is IFieldSymbol { AssociatedSymbol: IPropertySymbol behind })
        {
            member = behind;
        }

        var isNew = run.Read(member);
        if (HasStaticConstructor(member.ContainingType))
        {
            return Refuse(at, frame, $"'{member.ContainingType.Name}' has a static constructor, which is not evaluated", "write initialisers instead");
        }

        if (bodies.Initialiser(member.OriginalDefinition) is null)
        {
            return Default(member is IFieldSymbol field ? field.Type : ((IPropertySymbol)member).Type);
        }

        if (IsRunning(member))
        {
            return NotInitialised(at, frame, $"'{member.Name}' is read while its own value is being worked out", "break the cycle: let one of the two not use the other");
        }

        if (!IsBefore(member, run.Member, out var reason))
        {
            return NotInitialised(at, frame, $"'{member.Name}' {reason}", $"move '{member.Name}' above '{run.Member.Name}'");
        }

        if (!SymbolEqualityComparer.Default.Equals(member.ContainingType, run.Type) && throwing.TryGetValue(member.ContainingType, out var thrower))
        {
            // Told where it throws.
            run.Read(thrower);
            run.HasCause = true;
            throw new RefusedSignal();
        }

        if (early.Contains((run.Member, member)))
        {
            return NotInitialised(at, frame, $"'{member.ContainingType.Name}.{member.Name}' may have no value yet: the initialisers of '{member.ContainingType.Name}' and '{run.Type.Name}' use each other", "let one of the two classes not use the other, or move what both use into a third");
        }

        var result = Evaluated(member);
        if (isNew)
        {
            run.ReadSteps = Math.Min(run.ReadSteps + result.StepsBound, long.MaxValue / 4);
            Step(at, frame);
        }

        run.HasCause |= result.IsUnknown;
        return result.Raw;
    }

    private Unknown NotInitialised(IOperation at, Frame frame, string reason, string remedy) => Refuse(at, frame, reason, remedy, ProblemKind.NotInitialised);

    private bool IsRunning(ISymbol member)
    {
        for (var at = run; at is not null; at = at.Outer)
        {
            if (SymbolEqualityComparer.Default.Equals(at.Member, member))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether C# has given a member its value when it begins with another one's.</summary>
    private bool IsBefore(ISymbol member, ISymbol reader, out string reason)
    {
        reason = "";
        if (!SymbolEqualityComparer.Default.Equals(member.ContainingType, reader.ContainingType)
            || reader is IMethodSymbol || (reader is IPropertySymbol property && !IsAutomatic(property))
            || bodies.Syntax(member) is not { } first || bodies.Syntax(reader) is not { } second
            || bodies.Initialiser(member.OriginalDefinition) is null)
        {
            return true;
        }

        if (first.SyntaxTree != second.SyntaxTree)
        {
            reason = "stands in another file of this partial class; C# does not say which file comes first";
            return false;
        }

        reason = "has no value yet: static members get their values in the order in which they stand";
        return first.SpanStart < second.SpanStart;
    }

    /// <summary>A static of a compiled assembly: listed ones are values of the analyzer's own copy.</summary>
    private object? ForeignStatic(ISymbol member, IOperation at, Frame frame)
    {
        var name = $"{member.ContainingType.Name}.{member.Name}";
        if (types.Kind(member.ContainingAssembly) != AssemblyKind.Other)
        {
            if (member is IPropertySymbol { GetMethod: { } getter } && library.Find(getter) is var found)
            {
                return found.Method is not null ? CallLibrary(getter, null, [], at, frame) : Refuse(at, frame, found.Refusal!, found.Remedy);
            }

            return member is IFieldSymbol field && library.Find(field) is { } info
                ? Normalised(info.GetValue(null), field.Type)
                : Refuse(at, frame, $"'{name}' is not on the list of members that are evaluated", "write the value itself");
        }

        return Refuse(at, frame, $"'{name}' is a value of another assembly ({member.ContainingAssembly?.Name}), which is not known here", "declare the value in this project, or make it a constant", ProblemKind.ForeignValue);
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
