using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Iterators: lazy, as in C#. Yields stand in statements only, so that statements that hold one are run by C#'s own iterators here.</content>
internal sealed partial class Interpreter
{
    private object? Iterator(IOperation body, IMethodSymbol definition, Frame inner, IOperation at, Frame caller)
    {
        if (Resolve(definition.ReturnType, inner) is not INamedTypeSymbol { TypeArguments: [var element], Name: "IEnumerable" or "IEnumerator" } type || types.Find(element) is not { } real)
        {
            return Refuse(at, caller, "this iterator is not evaluated", "return IEnumerable of one type, an array or a list");
        }

        var self = inner.Activation.Self is Storage place ? place.Get() : null;
        var sequence = Sequences.Of(real).Lazy(Started(body, inner, self, at, caller));
        if (type.Name == "IEnumerable")
        {
            return sequence;
        }

        var walk = ((System.Collections.IEnumerable)sequence).GetEnumerator();
        Provenance.SetMaker(walk, run);
        return walk;
    }

    /// <summary>Each walk runs the body anew, with the arguments as they were.</summary>
    private IEnumerable<object?> Started(IOperation body, Frame arguments, object? copied, IOperation at, Frame caller)
    {
        var activation = new Activation(run, arguments.Activation.Method, copied is null ? arguments.Activation.Self : new Holder(copied), arguments.Activation.Site, arguments.Activation.TypeArguments);
        var frame = arguments.CopyInto(activation);
        var end = new IteratorEnd();
        foreach (var item in Yields(body, frame, end))
        {
            yield return item is Unknown ? throw new UnknownSignal(effects.Has(body)) : item;
        }
    }

    private IEnumerable<object?> Yields(IOperation statement, Frame frame, IteratorEnd end)
    {
        if (!effects.Yields(statement))
        {
            end.Completion = Guarded(statement, frame);
            return [];
        }

        Step(statement, frame);
        return statement switch
        {
            IReturnOperation given => YieldReturn(given, frame, end),
            IBlockOperation block => YieldsOfBlock(block, frame, end),
            IConditionalOperation choice => YieldsOfIf(choice, frame, end),
            IForEachLoopOperation each => YieldsOfForEach(each, frame, end),
            IForLoopOperation counted => YieldsOfFor(counted, frame, end),
            IWhileLoopOperation loop => YieldsOfWhile(loop, frame, end),
            ISwitchOperation choice => YieldsOfSwitch(choice, frame, end),
            ITryOperation { Catches.IsEmpty: true } attempt => YieldsOfTry(attempt, frame, end),
            ILabeledOperation { Operation: { } inner } => Yields(inner, frame, end),
            _ => NoYields(statement, frame),
        };
    }

    private Completion Guarded(IOperation statement, Frame frame)
    {
        Enter(statement, frame);
        try
        {
            return Execute(statement, frame);
        }
        finally
        {
            Leave();
        }
    }

    private object?[] NoYields(IOperation statement, Frame frame)
    {
        RefuseStatement(statement, frame, "'yield' in this statement is not evaluated", "return an array or a list");
        return [];
    }

    private IEnumerable<object?> YieldReturn(IReturnOperation given, Frame frame, IteratorEnd end)
    {
        if (given.Kind == OperationKind.YieldBreak)
        {
            end.Completion = Completion.Return;
            yield break;
        }

        yield return Evaluate(given.ReturnedValue!, frame);
        end.Completion = Completion.Normal;
    }

    private IEnumerable<object?> YieldsOfBlock(IBlockOperation block, Frame frame, IteratorEnd end)
    {
        var inner = NeedsFrame(block) ? new Frame(frame, frame.Activation) : frame;
        DeclareFunctions(block.Operations, inner);
        foreach (var statement in block.Operations)
        {
            foreach (var item in Yields(statement, inner, end))
            {
                yield return item;
            }

            if (end.Completion != Completion.Normal)
            {
                yield break;
            }
        }

        end.Completion = Completion.Normal;
    }

    private IEnumerable<object?> YieldsOfIf(IConditionalOperation choice, Frame frame, IteratorEnd end)
    {
        end.Completion = Completion.Normal;
        return Condition(choice.Condition, frame) ? Yields(choice.WhenTrue, frame, end) : choice.WhenFalse is { } otherwise ? Yields(otherwise, frame, end) : [];
    }

    /// <summary>After a round: whether the loop goes on.</summary>
    private static bool GoesOn(ILoopOperation loop, Frame frame, IteratorEnd end)
    {
        if (end.Completion == Completion.Jump)
        {
            if (SymbolEqualityComparer.Default.Equals(frame.Activation.Target, loop.ContinueLabel))
            {
                end.Completion = Completion.Normal;
                return true;
            }

            if (SymbolEqualityComparer.Default.Equals(frame.Activation.Target, loop.ExitLabel))
            {
                end.Completion = Completion.Normal;
                return false;
            }
        }

        return end.Completion == Completion.Normal;
    }

    private IEnumerable<object?> YieldsOfForEach(IForEachLoopOperation loop, Frame frame, IteratorEnd end)
    {
        var sequence = Evaluate(loop.Collection, frame);
        if (sequence is Unknown)
        {
            throw new UndecidedSignal();
        }

        end.Completion = Completion.Normal;
        if (loop.LoopControlVariable is IVariableDeclaratorOperation { Symbol.RefKind: not RefKind.None })
        {
            RefuseStatement(loop, frame, "references to variables are not evaluated here", "use the values");
        }

        foreach (var element in Enumerated(sequence, loop, frame))
        {
            var inner = new Frame(frame, frame.Activation);
            AssignLoopVariable(loop, element, inner);
            foreach (var item in Yields(loop.Body, inner, end))
            {
                yield return item;
            }

            if (!GoesOn(loop, frame, end))
            {
                yield break;
            }
        }
    }

    private IEnumerable<object?> YieldsOfFor(IForLoopOperation loop, Frame frame, IteratorEnd end)
    {
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
                end.Completion = Completion.Normal;
                yield break;
            }

            Step(loop, frame);
            foreach (var item in Yields(loop.Body, round, end))
            {
                yield return item;
            }

            if (!GoesOn(loop, frame, end))
            {
                yield break;
            }

            foreach (var step in loop.AtLoopBottom)
            {
                Execute(step, round);
            }
        }
    }

    private IEnumerable<object?> YieldsOfWhile(IWhileLoopOperation loop, Frame frame, IteratorEnd end)
    {
        while (true)
        {
            var inner = loop.Locals.IsEmpty ? frame : new Frame(frame, frame.Activation);
            end.Completion = Completion.Normal;
            if (loop.ConditionIsTop && loop.Condition is { } before && Condition(before, inner) == loop.ConditionIsUntil)
            {
                yield break;
            }

            Step(loop, frame);
            foreach (var item in Yields(loop.Body, inner, end))
            {
                yield return item;
            }

            if (!GoesOn(loop, frame, end) || (!loop.ConditionIsTop && loop.Condition is { } after && Condition(after, inner) == loop.ConditionIsUntil))
            {
                yield break;
            }
        }
    }

    private IEnumerable<object?> YieldsOfSwitch(ISwitchOperation operation, Frame frame, IteratorEnd end)
    {
        var value = Evaluate(operation.Value, frame);
        if (value is Unknown)
        {
            throw new UndecidedSignal();
        }

        var inner = new Frame(frame, frame.Activation);
        end.Completion = Completion.Normal;
        var section = Matching(operation, value, inner);
        while (section is not null)
        {
            foreach (var statement in section.Body)
            {
                foreach (var item in Yields(statement, inner, end))
                {
                    yield return item;
                }

                if (end.Completion != Completion.Normal)
                {
                    break;
                }
            }

            if (end.Completion != Completion.Jump)
            {
                yield break;
            }

            if (SymbolEqualityComparer.Default.Equals(frame.Activation.Target, operation.ExitLabel))
            {
                end.Completion = Completion.Normal;
                yield break;
            }

            section = Target(operation, frame.Activation.Target);
        }
    }

    private IEnumerable<object?> YieldsOfTry(ITryOperation attempt, Frame frame, IteratorEnd end)
    {
        try
        {
            foreach (var item in Yields(attempt.Body, frame, end))
            {
                yield return item;
            }
        }
        finally
        {
            if (attempt.Finally is { } last)
            {
                Guarded(last, frame);
            }
        }
    }

    /// <summary>How the statement that a walk has just left ended.</summary>
    private sealed class IteratorEnd
    {
        public Completion Completion { get; set; }
    }
}
