using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <summary>How a statement ends.</summary>
internal enum Completion
{
    /// <summary>The next statement follows.</summary>
    Normal,

    /// <summary>The method returns.</summary>
    Return,

    /// <summary>A break, continue or goto leads to the activation's target.</summary>
    Jump,
}

/// <content>Statements.</content>
internal sealed partial class Interpreter
{
    private Completion Execute(IOperation statement, Frame frame)
    {
        Step(statement, frame);
        switch (statement)
        {
            case IBlockOperation block:
                return Block(block.Operations, NeedsFrame(block) ? new Frame(frame, frame.Activation) : frame);
            case IExpressionStatementOperation expression:
                Statement(expression.Operation, frame);
                return Completion.Normal;
            case IVariableDeclarationGroupOperation group:
                Declare(group, frame);
                return Completion.Normal;
            case IReturnOperation { Kind: OperationKind.Return } given:
                return Return(given, frame);
            case IConditionalOperation choice:
                return If(choice, frame);
            case ILoopOperation loop:
                return Loop(loop, frame);
            case ISwitchOperation choice:
                return Switch(choice, frame);
            case IBranchOperation branch:
                frame.Activation.Target = branch.Target;
                return Completion.Jump;
            default:
                return ExecuteRest(statement, frame);
        }
    }

    private Completion ExecuteRest(IOperation statement, Frame frame)
    {
        switch (statement)
        {
            case IThrowOperation thrown:
                throw Throw(thrown, frame);
            case ILocalFunctionOperation or IEmptyOperation:
                return Completion.Normal;
            case ITryOperation attempt:
                return Try(attempt, frame);
            case ILabeledOperation labeled:
                return labeled.Operation is { } inner ? Execute(inner, frame) : Completion.Normal;
            case IUsingOperation or IUsingDeclarationOperation:
                return RefuseStatement(statement, frame, "'using' is not evaluated", "leave the resource out");
            case ILockOperation:
                return RefuseStatement(statement, frame, "'lock' is not evaluated", "leave the lock out");
            case IReturnOperation:
                return RefuseStatement(statement, frame, "'yield' is not evaluated here", "return an array or a list");
            case IInvalidOperation:
                throw new RefusedSignal();
            default:
                // A constructor's or accessor's expression body is a bare expression in some shapes of tree.
                Statement(statement, frame);
                return Completion.Normal;
        }
    }

    private Completion RefuseStatement(IOperation statement, Frame frame, string reason, string remedy)
    {
        Refuse(statement, frame, reason, remedy);
        throw new RefusedSignal();
    }

    private void Statement(IOperation expression, Frame frame)
    {
        // A statement whose value is unknown has not had its effect.
        if (Evaluate(expression, frame) is Unknown && expression is not (IAssignmentOperation or IIncrementOrDecrementOperation) && effects.Has(expression))
        {
            throw new RefusedSignal();
        }
    }

    /// <summary>Whether a block has variables or functions of its own.</summary>
    private static bool NeedsFrame(IBlockOperation block)
    {
        if (!block.Locals.IsEmpty)
        {
            return true;
        }

        foreach (var operation in block.Operations)
        {
            if (operation is ILocalFunctionOperation)
            {
                return true;
            }
        }

        return false;
    }

    private Completion Block(ImmutableArray<IOperation> statements, Frame frame)
    {
        DeclareFunctions(statements, frame);
        var i = 0;
        while (i < statements.Length)
        {
            var completion = Execute(statements[i], frame);
            if (completion == Completion.Normal)
            {
                i++;
                continue;
            }

            // A goto to a label of this block.
            if (completion == Completion.Jump && Labeled(statements, frame.Activation.Target) is { } next)
            {
                i = next;
                continue;
            }

            return completion;
        }

        return Completion.Normal;
    }

    private static int? Labeled(ImmutableArray<IOperation> statements, ILabelSymbol? target)
    {
        for (var i = 0; i < statements.Length; i++)
        {
            for (var at = statements[i] as ILabeledOperation; at is not null; at = at.Operation as ILabeledOperation)
            {
                if (SymbolEqualityComparer.Default.Equals(at.Label, target))
                {
                    return i;
                }
            }
        }

        return null;
    }

    private static void DeclareFunctions(ImmutableArray<IOperation> statements, Frame frame)
    {
        foreach (var statement in statements)
        {
            if (statement is ILocalFunctionOperation { Body: { } body } function)
            {
                frame.Declare(function.Symbol, new LocalFunction(body, frame));
            }
        }
    }

    private void Declare(IVariableDeclarationGroupOperation group, Frame frame)
    {
        foreach (var declaration in group.Declarations)
        {
            foreach (var declarator in declaration.Declarators)
            {
                var initializer = declarator.Initializer ?? declaration.Initializer;
                if (declarator.Symbol.RefKind != RefKind.None && initializer is not null)
                {
                    frame.Declare(declarator.Symbol, declarator.Symbol.RefKind == RefKind.Ref || IsVariable(initializer.Value, frame, orReadOnly: true) ? Reference(initializer.Value, frame) : new Holder(Evaluate(initializer.Value, frame)));
                    continue;
                }

                frame.Declare(declarator.Symbol, initializer is null ? Default(Resolve(declarator.Symbol.Type, frame)) : Evaluate(initializer.Value, frame));
            }
        }
    }

    private Completion Return(IReturnOperation operation, Frame frame)
    {
        frame.Activation.Result = operation.ReturnedValue is not { } value ? null
            : frame.Activation.Method is not { RefKind: not RefKind.None } method ? Evaluate(value, frame)
            : method.RefKind == RefKind.Ref || IsVariable(value, frame, orReadOnly: true) ? Reference(value, frame)
            : new Holder(Evaluate(value, frame));
        return Completion.Return;
    }

    private Completion If(IConditionalOperation operation, Frame frame)
    {
        switch (Evaluate(operation.Condition, frame))
        {
            case true:
                return Execute(operation.WhenTrue, frame);
            case false:
                return operation.WhenFalse is { } otherwise ? Execute(otherwise, frame) : Completion.Normal;
            default:
                throw new UndecidedSignal();
        }
    }

    private Completion Loop(ILoopOperation loop, Frame frame) => loop switch
    {
        IForEachLoopOperation each => ForEach(each, frame),
        IForLoopOperation counted => For(counted, frame),
        IWhileLoopOperation conditional => While(conditional, frame),
        _ => RefuseStatement(loop, frame, "this loop is not evaluated", "use for, foreach or while"),
    };

    /// <summary>Runs a loop's body; whether the loop goes on.</summary>
    private bool Iterate(ILoopOperation loop, IOperation body, Frame frame, out Completion completion)
    {
        completion = Execute(body, frame);
        if (completion == Completion.Jump)
        {
            var target = frame.Activation.Target;
            if (SymbolEqualityComparer.Default.Equals(target, loop.ContinueLabel))
            {
                completion = Completion.Normal;
                return true;
            }

            if (SymbolEqualityComparer.Default.Equals(target, loop.ExitLabel))
            {
                completion = Completion.Normal;
                return false;
            }
        }

        return completion == Completion.Normal;
    }

    private bool Condition(IOperation condition, Frame frame) => Evaluate(condition, frame) switch
    {
        bool truth => truth,
        _ => throw new UndecidedSignal(),
    };

    private Completion While(IWhileLoopOperation loop, Frame frame)
    {
        while (true)
        {
            // Variables of the condition are new in each round.
            var inner = loop.Locals.IsEmpty ? frame : new Frame(frame, frame.Activation);
            if (loop.ConditionIsTop && loop.Condition is { } before && Condition(before, inner) == loop.ConditionIsUntil)
            {
                return Completion.Normal;
            }

            Step(loop, frame);
            if (!Iterate(loop, loop.Body, inner, out var completion))
            {
                return completion;
            }

            if (!loop.ConditionIsTop && loop.Condition is { } after && Condition(after, inner) == loop.ConditionIsUntil)
            {
                return Completion.Normal;
            }
        }
    }

    private Completion For(IForLoopOperation loop, Frame frame)
    {
        // One variable for all rounds, as in C#.
        var inner = new Frame(frame, frame.Activation);
        foreach (var start in loop.Before)
        {
            Execute(start, inner);
        }

        while (true)
        {
            var round = loop.ConditionLocals.IsEmpty ? inner : new Frame(inner, inner.Activation);
            if (loop.Condition is { } condition && !Condition(condition, round))
            {
                return Completion.Normal;
            }

            Step(loop, frame);
            if (!Iterate(loop, loop.Body, round, out var completion))
            {
                return completion;
            }

            foreach (var step in loop.AtLoopBottom)
            {
                Execute(step, round);
            }
        }
    }

    private Completion ForEach(IForEachLoopOperation loop, Frame frame)
    {
        if (loop.IsAsynchronous)
        {
            return RefuseStatement(loop, frame, "asynchronous code is not evaluated", "use a plain foreach");
        }

        var sequence = Evaluate(loop.Collection, frame);
        if (sequence is Unknown)
        {
            throw new UndecidedSignal();
        }

        if (loop.LoopControlVariable is IVariableDeclaratorOperation { Symbol.RefKind: not RefKind.None } reference)
        {
            return ForEachReference(loop, reference, sequence, frame);
        }

        foreach (var item in Enumerated(sequence, loop, frame))
        {
            var inner = new Frame(frame, frame.Activation);
            AssignLoopVariable(loop, item, inner);
            if (!Iterate(loop, loop.Body, inner, out var completion))
            {
                return completion;
            }
        }

        return Completion.Normal;
    }

    /// <summary><c>foreach (ref var item in span)</c>: each round's variable is the element itself.</summary>
    private Completion ForEachReference(IForEachLoopOperation loop, IVariableDeclaratorOperation variable, object? sequence, Frame frame)
    {
        if (sequence is not Array { Rank: 1 } array)
        {
            return RefuseStatement(loop, frame, "references to variables are not evaluated here", "use the values");
        }

        for (var i = 0; i < array.Length; i++)
        {
            Step(loop, frame);
            var inner = new Frame(frame, frame.Activation);
            inner.Declare(variable.Symbol, ElementPlace(array, [i], loop.Collection, frame));
            if (!Iterate(loop, loop.Body, inner, out var completion))
            {
                return completion;
            }
        }

        return Completion.Normal;
    }

    /// <summary>What a foreach goes through: a library's sequence, or an object of the source with its own enumerator.</summary>
    private IEnumerable<object?> Enumerated(object? sequence, IForEachLoopOperation loop, Frame frame)
    {
        if (sequence is UserObject user)
        {
            return Duck(user, loop, frame);
        }

        return Elements(sequence, null, loop.Collection, frame);
    }

    private IEnumerable<object?> Duck(UserObject sequence, IOperation at, Frame frame)
    {
        // GetEnumerator of the type itself, or of the interface it implements.
        if (FindMember(sequence.Type, "GetEnumerator") is not IMethodSymbol { Parameters.IsEmpty: true } opener)
        {
            Refuse(at, frame, "this sequence is not evaluated", "use an array or a list");
            throw new RefusedSignal();
        }

        var walk = Call(Override(opener, sequence), sequence, [], at, frame);
        switch (walk)
        {
            case System.Collections.IEnumerator library:
                foreach (var item in InLibrary(Rest(library), at, frame))
                {
                    Step(at, frame);
                    yield return item;
                }

                break;
            case UserObject own when FindMember(own.Type, "MoveNext") is IMethodSymbol next && FindMember(own.Type, "Current") is IPropertySymbol { GetMethod: { } current }:
                object place = own.Type.IsValueType ? new Holder(own) : own;
                try
                {
                    while (Decide(Call(next, place, [], at, frame)))
                    {
                        Step(at, frame);
                        yield return ValueOf(Call(current, place, [], at, frame));
                    }
                }
                finally
                {
                    Dispose(own.Type, place, at, frame);
                }

                break;
            default:
                Refuse(at, frame, "this sequence is not evaluated", "use an array or a list");
                throw new RefusedSignal();
        }
    }

    /// <summary>What foreach does with an enumerator in the end.</summary>
    private void Dispose(INamedTypeSymbol type, object enumerator, IOperation at, Frame frame)
    {
        foreach (var implemented in type.AllInterfaces)
        {
            if (implemented.SpecialType == SpecialType.System_IDisposable && type.FindImplementationForInterfaceMember(implemented.GetMembers("Dispose")[0]) is IMethodSymbol dispose)
            {
                Call(dispose, enumerator, [], at, frame);
            }
        }
    }

    private static IEnumerable<object?> Rest(System.Collections.IEnumerator walk)
    {
        while (walk.MoveNext())
        {
            yield return walk.Current;
        }
    }

    private static ISymbol? FindMember(INamedTypeSymbol type, string name)
    {
        for (var at = type; at is not null; at = at.BaseType)
        {
            foreach (var member in at.GetMembers(name))
            {
                if (!member.IsStatic && member.DeclaredAccessibility == Accessibility.Public)
                {
                    return member;
                }
            }
        }

        return null;
    }

    private void AssignLoopVariable(IForEachLoopOperation loop, object? item, Frame inner)
    {
        switch (loop.LoopControlVariable)
        {
            case IVariableDeclaratorOperation declarator:
                inner.Declare(declarator.Symbol, LoopItem(loop, item, Resolve(declarator.Symbol.Type, inner), inner));
                break;
            case IDeclarationExpressionOperation { Expression: ITupleOperation tuple }:
                AssignParts(Places(tuple, inner), tuple, item, ElementType(loop), loop, inner);
                break;
            case ITupleOperation tuple:
                AssignParts(Places(tuple, inner), tuple, item, ElementType(loop), loop, inner);
                break;
            default:
                RefuseStatement(loop, inner, "this loop variable is not evaluated", "declare a plain variable");
                break;
        }
    }

    private object? LoopItem(IForEachLoopOperation loop, object? item, ITypeSymbol wanted, Frame frame)
    {
        item = Normalised(item, wanted);
        var given = ElementType(loop);
        if (given is null || item is null or Unknown)
        {
            return item;
        }

        var conversion = compilation.ClassifyCommonConversion(given, wanted);
        return conversion is { Exists: true, IsIdentity: false } && (conversion.IsNumeric || conversion.IsUserDefined || !conversion.IsImplicit)
            ? Convert(item, given, wanted, conversion.MethodSymbol, false, loop, frame)
            : item;
    }

    private ITypeSymbol? ElementType(IForEachLoopOperation loop) => bodies.ElementType(loop.Syntax);

    private Completion Try(ITryOperation operation, Frame frame)
    {
        if (!operation.Catches.IsEmpty)
        {
            return RefuseStatement(operation, frame, "'catch' is not evaluated", "test beforehand whether it would throw");
        }

        Completion completion;
        ILabelSymbol? target;
        object? result;
        try
        {
            completion = Execute(operation.Body, frame);
            target = frame.Activation.Target;
            result = frame.Activation.Result;
        }
        catch (ThrowSignal)
        {
            if (operation.Finally is { } last)
            {
                Execute(last, frame);
            }

            throw;
        }

        if (operation.Finally is { } after)
        {
            var ending = Execute(after, frame);
            if (ending != Completion.Normal)
            {
                return ending;
            }

            frame.Activation.Target = target;
            frame.Activation.Result = result;
        }

        return completion;
    }

    private Completion Switch(ISwitchOperation operation, Frame frame)
    {
        var value = Evaluate(operation.Value, frame);
        if (value is Unknown)
        {
            throw new UndecidedSignal();
        }

        var inner = new Frame(frame, frame.Activation);
        var section = Matching(operation, value, inner);
        while (section is not null)
        {
            DeclareFunctions(section.Body, inner);
            var completion = Sections(section, inner);
            if (completion != Completion.Jump)
            {
                return completion;
            }

            if (SymbolEqualityComparer.Default.Equals(frame.Activation.Target, operation.ExitLabel))
            {
                return Completion.Normal;
            }

            section = Target(operation, frame.Activation.Target);
            if (section is null)
            {
                return completion;
            }
        }

        return Completion.Normal;
    }

    private Completion Sections(ISwitchCaseOperation section, Frame frame)
    {
        foreach (var statement in section.Body)
        {
            var completion = Execute(statement, frame);
            if (completion != Completion.Normal)
            {
                return completion;
            }
        }

        return Completion.Normal;
    }

    private static ISwitchCaseOperation? Target(ISwitchOperation operation, ILabelSymbol? label)
    {
        foreach (var section in operation.Cases)
        {
            foreach (var clause in section.Clauses)
            {
                if (clause.Label is not null && SymbolEqualityComparer.Default.Equals(clause.Label, label))
                {
                    return section;
                }
            }
        }

        return null;
    }

    private ISwitchCaseOperation? Matching(ISwitchOperation operation, object? value, Frame frame)
    {
        ISwitchCaseOperation? otherwise = null;
        foreach (var section in operation.Cases)
        {
            foreach (var clause in section.Clauses)
            {
                switch (clause)
                {
                    case IDefaultCaseClauseOperation:
                        otherwise = section;
                        break;
                    case ISingleValueCaseClauseOperation single:
                        if (Matches(single.Value, value, frame))
                        {
                            return section;
                        }

                        break;
                    case IPatternCaseClauseOperation pattern:
                        if (Decide(Match(pattern.Pattern, value, frame)) && (pattern.Guard is not { } guard || Condition(guard, frame)))
                        {
                            return section;
                        }

                        break;
                    default:
                        RefuseStatement(clause, frame, "this case is not evaluated", "use a constant or a pattern");
                        break;
                }
            }
        }

        return otherwise;
    }

    private bool Matches(IOperation constant, object? value, Frame frame)
    {
        var wanted = Evaluate(constant, frame);
        return wanted is Unknown ? throw new UndecidedSignal() : SameConstant(value, wanted);
    }

    private static bool Decide(object? truth) => truth switch
    {
        bool decided => decided,
        _ => throw new UndecidedSignal(),
    };
}
