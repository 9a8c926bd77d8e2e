using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Expressions. One small method a kind: the frame of one large method would use up the stack.</content>
internal sealed partial class Interpreter
{
    /// <summary>The value of an expression; <see cref="Unknown.Value"/> where it cannot be worked out.</summary>
    private object? Evaluate(IOperation operation, Frame frame)
    {
        Step(operation, frame);
        RuntimeHelpers.EnsureSufficientExecutionStack();
        var constant = operation.ConstantValue;
        return constant.HasValue ? Constant(constant.Value, operation, frame) : Dispatch(operation, frame);
    }

    private object? Dispatch(IOperation operation, Frame frame)
    {
        switch (operation.Kind)
        {
            case OperationKind.ObjectCreation:
                return ObjectCreation((IObjectCreationOperation)operation, frame);
            case OperationKind.Invocation:
                return ValueOf(Invocation((IInvocationOperation)operation, frame));
            case OperationKind.Conversion:
                return Conversion((IConversionOperation)operation, frame);
            case OperationKind.FieldReference:
                return FieldReference((IFieldReferenceOperation)operation, frame);
            case OperationKind.PropertyReference:
                return PropertyReference((IPropertyReferenceOperation)operation, frame);
            case OperationKind.LocalReference:
                return Variable(((ILocalReferenceOperation)operation).Local, operation, frame);
            case OperationKind.ParameterReference:
                return Variable(((IParameterReferenceOperation)operation).Parameter, operation, frame);
            case OperationKind.CollectionExpression:
                return CollectionExpression((ICollectionExpressionOperation)operation, frame);
            case OperationKind.Binary:
                return Binary((IBinaryOperation)operation, frame);
            case OperationKind.Unary:
                return Unary((IUnaryOperation)operation, frame);
            case OperationKind.DelegateCreation:
                return DelegateCreation((IDelegateCreationOperation)operation, frame);
            case OperationKind.InterpolatedString:
                return InterpolatedString((IInterpolatedStringOperation)operation, frame);
            case OperationKind.Conditional:
                return Conditional((IConditionalOperation)operation, frame);
            case OperationKind.InstanceReference:
                return InstanceReference((IInstanceReferenceOperation)operation, frame);
            default:
                return DispatchRest(operation, frame);
        }
    }

    private object? DispatchRest(IOperation operation, Frame frame)
    {
        switch (operation)
        {
            case IWithOperation with:
                return With(with, frame);
            case IArrayCreationOperation creation:
                return ArrayCreation(creation, frame);
            case IArrayElementReferenceOperation element:
                return ArrayElement(element, frame);
            case IParenthesizedOperation parenthesized:
                return Evaluate(parenthesized.Operand, frame);
            case IDefaultValueOperation:
                return Default(TypeOf(operation, frame));
            case ICoalesceOperation coalesce:
                return Coalesce(coalesce, frame);
            case IConditionalAccessOperation access:
                return ConditionalAccess(access, frame);
            case IConditionalAccessInstanceOperation:
                return frame.Activation.Implicit.Count > 0 ? frame.Activation.Implicit.Peek() : Unknown.Value;
            case ITupleOperation tuple:
                return Tuple(tuple, frame);
            case ISwitchExpressionOperation choice:
                return SwitchExpression(choice, frame);
            case IIsPatternOperation pattern:
                return IsPattern(pattern, frame);
            case IIsTypeOperation isType:
                return IsType(isType, frame);
            case ITranslatedQueryOperation query:
                return Evaluate(query.Operation, frame);
            case IAnonymousObjectCreationOperation anonymous:
                return AnonymousObject(anonymous, frame);
            case ITypeParameterObjectCreationOperation creation:
                return TypeParameterCreation(creation, frame);
            case IThrowOperation thrown:
                throw Throw(thrown, frame);
            case IRangeOperation range:
                return Range(range, frame);
            case IImplicitIndexerReferenceOperation indexer:
                return ImplicitIndexer(indexer, frame);
            case ITupleBinaryOperation comparison:
                return TupleBinary(comparison, frame);
            default:
                return DispatchEffects(operation, frame);
        }
    }

    private object? DispatchEffects(IOperation operation, Frame frame)
    {
        switch (operation)
        {
            case ISimpleAssignmentOperation assignment:
                return SimpleAssignment(assignment, frame);
            case ICompoundAssignmentOperation assignment:
                return CompoundAssignment(assignment, frame);
            case IIncrementOrDecrementOperation increment:
                return Increment(increment, frame);
            case ICoalesceAssignmentOperation assignment:
                return CoalesceAssignment(assignment, frame);
            case IDeconstructionAssignmentOperation assignment:
                return Deconstruction(assignment, frame);
            case IDeclarationExpressionOperation declaration:
                return Evaluate(declaration.Expression, frame);
            case IInvalidOperation or IOmittedArgumentOperation:
                return Silent();
            case IAwaitOperation:
                return Refuse(operation, frame, "asynchronous code is not evaluated", "write a plain method");
            case ITypeOfOperation:
                return Refuse(operation, frame, "reflection is not evaluated", "write the value itself");
            case IDynamicInvocationOperation or IDynamicMemberReferenceOperation or IDynamicObjectCreationOperation or IDynamicIndexerAccessOperation:
                return Refuse(operation, frame, "dynamic code is not evaluated", "use the static type");
            case IUtf8StringOperation:
                return Refuse(operation, frame, "UTF-8 strings are not evaluated", "use a string");
            case IAddressOfOperation or ISizeOfOperation:
                return Refuse(operation, frame, "unsafe code is not evaluated", "write the value itself");
            case IInterpolatedStringHandlerCreationOperation:
                return Refuse(operation, frame, "interpolated string handlers are not evaluated", "use a plain interpolated string");
            case IEventAssignmentOperation or IEventReferenceOperation:
                return Refuse(operation, frame, "events are not evaluated", "write the value itself");
            default:
                return operation.Type?.TypeKind == TypeKind.Error
                    ? Silent()
                    : Refuse(operation, frame, $"this kind of expression ({operation.Kind}) is not evaluated", "write the value itself, or use a plainer expression");
        }
    }

    private object? Constant(object? value, IOperation at, Frame frame)
    {
        if (value is string text && text.Length > limits.Text)
        {
            throw OverText(at, frame);
        }

        if (at.Type?.SpecialType is SpecialType.System_IntPtr or SpecialType.System_UIntPtr)
        {
            return Refuse(at, frame, "native integers are not evaluated", "use int or long");
        }

        return value is not null && at.Type is { TypeKind: TypeKind.Enum } type ? EnumValue(type, value) : value;
    }

    /// <summary>The enumeration value with the given underlying value.</summary>
    private object EnumValue(ITypeSymbol type, object underlying)
    {
        if (types.IsSource(type))
        {
            return new UserEnum((INamedTypeSymbol)type, Enums.Bits(underlying));
        }

        return types.Find(type) is { IsEnum: true } real ? Enum.ToObject(real, underlying) : underlying;
    }

    private BudgetSignal OverText(IOperation at, Frame frame) =>
        OverBudget(at, frame, $"a text is longer than {Thousands(limits.Text)} characters", "write a shorter text");

    private BudgetSignal OverElements(IOperation at, Frame frame) =>
        OverBudget(at, frame, $"a collection has more than {Thousands(limits.Elements)} elements", "use fewer elements");

    private object? Variable(ISymbol symbol, IOperation at, Frame frame)
    {
        if (frame.TryFind(symbol, out var holder, out var index))
        {
            var value = holder[index];
            return value is Storage location ? location.Get() : value;
        }

        // A parameter of a primary constructor, used in the object's members.
        if (symbol is IParameterSymbol && Self(frame) is UserObject self && self.Layout.TryGet(symbol, out var slot))
        {
            return self.Slots[slot];
        }

        return Refuse(at, frame, $"'{symbol.Name}' has no value here", "write the value itself");
    }

    private static object? Self(Frame frame) => frame.Activation.Self is Storage location ? location.Get() : frame.Activation.Self;

    private object? InstanceReference(IInstanceReferenceOperation operation, Frame frame)
    {
        switch (operation.ReferenceKind)
        {
            case InstanceReferenceKind.ImplicitReceiver or InstanceReferenceKind.PatternInput:
                return frame.Activation.Implicit.Count > 0 ? ValueOf(frame.Activation.Implicit.Peek()) : Unknown.Value;
            case InstanceReferenceKind.ContainingTypeInstance:
                return Self(frame);
            default:
                return Refuse(operation, frame, "this reference is not evaluated", "write the value itself");
        }
    }

    private object? Conditional(IConditionalOperation operation, Frame frame)
    {
        switch (Evaluate(operation.Condition, frame))
        {
            case true:
                return Evaluate(operation.WhenTrue, frame);
            case false:
                return operation.WhenFalse is { } otherwise ? Evaluate(otherwise, frame) : null;
            default:
                Skip(operation.WhenTrue);
                Skip(operation.WhenFalse);
                return Unknown.Value;
        }
    }

    private object? Coalesce(ICoalesceOperation operation, Frame frame)
    {
        var value = Evaluate(operation.Value, frame);
        if (value is Unknown)
        {
            Skip(operation.WhenNull);
            return value;
        }

        if (value is null)
        {
            return Evaluate(operation.WhenNull, frame);
        }

        return operation.ValueConversion.Exists && !operation.ValueConversion.IsIdentity && operation.Value.Type is { } from && operation.Type is { } to
            ? Convert(value, Resolve(from, frame), Resolve(to, frame), operation.ValueConversion.MethodSymbol, false, operation, frame)
            : value;
    }

    private object? ConditionalAccess(IConditionalAccessOperation operation, Frame frame)
    {
        var receiver = Evaluate(operation.Operation, frame);
        if (receiver is Unknown)
        {
            Skip(operation.WhenNotNull);
            return receiver;
        }

        if (receiver is null)
        {
            return null;
        }

        frame.Activation.Implicit.Push(receiver);
        try
        {
            return Evaluate(operation.WhenNotNull, frame);
        }
        finally
        {
            frame.Activation.Implicit.Pop();
        }
    }

    /// <summary>An operation is not carried out because a condition is unknown: if it would change anything, all that follows is unknown.</summary>
    private void Skip(IOperation? skipped)
    {
        if (skipped is not null && effects.Has(skipped))
        {
            throw new RefusedSignal();
        }
    }

    private ThrowSignal Throw(IThrowOperation operation, Frame frame)
    {
        var origin = new Origin(operation.Syntax, frame.Activation.Site, run.Member);
        if (operation.Exception is null)
        {
            return new ThrowSignal("System.Exception", "an exception is thrown again", origin);
        }

        var exception = operation.Exception;
        while (exception is IConversionOperation { IsImplicit: true } conversion)
        {
            exception = conversion.Operand;
        }

        // An exception type of the source derives from a library class; only its name and message matter here.
        if (exception is IObjectCreationOperation { Type: { } type } creation && types.IsSource(type))
        {
            var text = creation.Constructor is { } constructor ? ExceptionText((INamedTypeSymbol)type, Resolve(constructor, frame), Arguments(creation.Arguments, constructor, frame), creation, frame) : null;
            return new ThrowSignal(TypeMap.MetadataName((INamedTypeSymbol)type), text ?? "its message could not be worked out", origin);
        }

        return Evaluate(exception, frame) switch
        {
            Exception made => new ThrowSignal(made.GetType().FullName!, made.Message, origin),
            null => new ThrowSignal("System.NullReferenceException", new NullReferenceException().Message, origin),
            _ => new ThrowSignal(exception.Type?.ToDisplayString() ?? "System.Exception", "its message could not be worked out", origin),
        };
    }

    /// <summary>The message that an exception of the source gets from the library class from which it derives; null where that is not known.</summary>
    private string? ExceptionText(INamedTypeSymbol type, IMethodSymbol constructor, object?[] arguments, IOperation at, Frame frame)
    {
        var own = type;
        while (own is not null && types.IsSource(own))
        {
            if (own.GetMembers("Message").Length > 0)
            {
                return null;
            }

            own = own.BaseType;
        }

        var inner = new Frame(null, new Activation(run, constructor, null, OriginAt(at, frame), ArgumentsOfChain(constructor.ContainingType)));
        Bind(constructor.OriginalDefinition, arguments, inner);
        var call = bodies.Syntax(constructor.OriginalDefinition) switch
        {
            TypeDeclarationSyntax { BaseList.Types: [PrimaryConstructorBaseTypeSyntax primary, ..] } => bodies.Operation(primary),
            ConstructorDeclarationSyntax { Initializer: not null } declaration => (bodies.Operation(declaration) as IConstructorBodyOperation)?.Initializer,
            _ => null,
        };
        while (call is IExpressionStatementOperation statement)
        {
            call = statement.Operation;
        }

        if (call is IInvocationOperation chained && types.IsSource(chained.TargetMethod.ContainingType))
        {
            return ExceptionText(type, Resolve(chained.TargetMethod, inner), Arguments(chained.Arguments, chained.TargetMethod, inner), at, frame);
        }

        var named = $"Exception of type '{TypeMap.MetadataName(type)}' was thrown.";
        if (call is not IInvocationOperation asked)
        {
            return constructor.ContainingType.BaseType is { Name: "Exception", ContainingNamespace.Name: "System" } ? named : null;
        }

        return Evaluated(asked, inner) switch
        {
            Exception made when made.GetType() == typeof(Exception) && (asked.Arguments.IsEmpty || asked.Arguments[0].Value.ConstantValue is { HasValue: true, Value: null }) => named,
            Exception made => made.Message,
            _ => null,
        };
    }

    private object? Evaluated(IInvocationOperation baseCall, Frame inner) => CallLibrary(baseCall.TargetMethod, null, Arguments(baseCall.Arguments, baseCall.TargetMethod, inner), baseCall, inner);

    /// <summary>Raises an exception of the evaluated program as the runtime would.</summary>
    private ThrowSignal Raise(Exception exception, IOperation at, Frame frame) =>
        new(exception.GetType().FullName!, exception.Message, new Origin(at.Syntax, frame.Activation.Site, run.Member));

    private object? Range(IRangeOperation range, Frame frame)
    {
        var start = range.LeftOperand is { } left ? Evaluate(left, frame) : new IndexValue(0, false);
        var end = range.RightOperand is { } right ? Evaluate(right, frame) : new IndexValue(0, true);
        return start is IndexValue from && end is IndexValue to ? new RangeValue(from, to) : Unknown.Value;
    }

    private object? Tuple(ITupleOperation tuple, Frame frame)
    {
        var values = new object?[tuple.Elements.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Evaluate(tuple.Elements[i], frame);
        }

        return MakeTuple(values, TypeOf(tuple, frame), tuple, frame);
    }

    private object? MakeTuple(object?[] values, ITypeSymbol? type, IOperation at, Frame frame)
    {
        foreach (var value in values)
        {
            if (value is Unknown)
            {
                return value;
            }
        }

        return type is not null && types.Find(type) is { } real
            ? Activator.CreateInstance(real, values)
            : Refuse(at, frame, "this tuple is not evaluated", "use a tuple of at most seven values, or a record");
    }

    private object? TupleBinary(ITupleBinaryOperation operation, Frame frame)
    {
        var left = TupleOperand(operation.LeftOperand, frame);
        var right = TupleOperand(operation.RightOperand, frame);
        if (left is Unknown || right is Unknown)
        {
            return Unknown.Value;
        }

        var equal = TuplesEqual(left, right, operation, frame);
        return equal is bool answer ? answer == (operation.OperatorKind == BinaryOperatorKind.Equals) : equal;
    }

    /// <summary>A tuple to be compared; one with a literal null has no type of its own and comes as its values.</summary>
    private object? TupleOperand(IOperation operand, Frame frame)
    {
        var inner = operand;
        while (inner is IConversionOperation { IsImplicit: true } conversion)
        {
            inner = conversion.Operand;
        }

        if (inner is not ITupleOperation { Type: null } tuple)
        {
            return Evaluate(operand, frame);
        }

        var values = new object?[tuple.Elements.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Evaluate(tuple.Elements[i], frame);
            if (values[i] is Unknown)
            {
                return Unknown.Value;
            }
        }

        return values;
    }

    private object? TuplesEqual(object? left, object? right, IOperation at, Frame frame)
    {
        if (left is null || right is null)
        {
            return left is null && right is null;
        }

        var lefts = TupleParts(left);
        var rights = TupleParts(right);
        for (var i = 0; i < lefts.Length; i++)
        {
            object? equal;
            if (IsTuple(lefts[i]))
            {
                equal = TuplesEqual(lefts[i], rights[i], at, frame);
            }
            else if (IsPlain(lefts[i]) && IsPlain(rights[i]))
            {
                equal = Arithmetic.PlainEquals(lefts[i], rights[i]);
            }
            else
            {
                equal = Refuse(at, frame, "this comparison of tuples is not evaluated", "compare the values one by one");
            }

            if (equal is not true)
            {
                return equal;
            }
        }

        return true;
    }

    private static bool IsPlain(object? value) => value is null or string or bool or UserEnum or Enum || (value is IConvertible and ValueType and not DateTime);

    private static bool IsTuple(object? value) => value is not null && value.GetType() is { IsValueType: true, IsGenericType: true } type && type.FullName!.StartsWith("System.ValueTuple`", StringComparison.Ordinal);

    /// <summary>The values of a tuple, in order.</summary>
    private static object?[] TupleParts(object tuple)
    {
        if (tuple is object?[] values)
        {
            return values;
        }

        var fields = tuple.GetType().GetFields();
        var parts = new object?[fields.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] = tuple.GetType().GetField("Item" + (char)('1' + i))!.GetValue(tuple);
        }

        return parts;
    }
}
