using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Operators.</content>
internal sealed partial class Interpreter
{
    private object? Binary(IBinaryOperation operation, Frame frame)
    {
        switch (operation.OperatorKind)
        {
            case BinaryOperatorKind.ConditionalAnd or BinaryOperatorKind.ConditionalOr:
                return ShortCircuit(operation, frame);
        }

        // A long sum is a deep tree that leans to the left: descend without recursion.
        if (operation.LeftOperand is IBinaryOperation { ConstantValue.HasValue: false } first && first.OperatorKind is not (BinaryOperatorKind.ConditionalAnd or BinaryOperatorKind.ConditionalOr))
        {
            return LeaningBinary(operation, first, frame);
        }

        var left = Evaluate(operation.LeftOperand, frame);
        return BinaryWith(operation, left, frame);
    }

    private object? LeaningBinary(IBinaryOperation operation, IBinaryOperation first, Frame frame)
    {
        var spine = new Stack<IBinaryOperation>();
        spine.Push(operation);
        var at = first;
        while (true)
        {
            spine.Push(at);
            if (at.LeftOperand is IBinaryOperation { ConstantValue.HasValue: false } next && next.OperatorKind is not (BinaryOperatorKind.ConditionalAnd or BinaryOperatorKind.ConditionalOr))
            {
                at = next;
                continue;
            }

            break;
        }

        var value = Evaluate(at.LeftOperand, frame);
        while (spine.Count > 0)
        {
            var node = spine.Pop();
            Step(node, frame);
            value = BinaryWith(node, value, frame);
        }

        return value;
    }

    private object? BinaryWith(IBinaryOperation operation, object? left, Frame frame)
    {
        var right = Evaluate(operation.RightOperand, frame);
        return Operate(operation.OperatorKind, left, right, OperatorOn(operation.OperatorMethod, operation.ConstrainedToType, frame), operation.IsLifted, operation.IsChecked, operation.LeftOperand.Type, operation.RightOperand.Type, operation.Type, operation, frame);
    }

    private object? ShortCircuit(IBinaryOperation operation, Frame frame)
    {
        var and = operation.OperatorKind == BinaryOperatorKind.ConditionalAnd;
        var left = Evaluate(operation.LeftOperand, frame);
        if (operation.OperatorMethod is not null)
        {
            return OwnShortCircuit(operation, operation.OperatorMethod, and, left, frame);
        }

        if (left is Unknown)
        {
            Skip(operation.RightOperand);
            return left;
        }

        return left is bool truth && truth == and ? Evaluate(operation.RightOperand, frame) : left;
    }

    /// <summary><c>x &amp;&amp; y</c> of a type with operators true, false and &amp;: x where x is false, else x &amp; y.</summary>
    private object? OwnShortCircuit(IBinaryOperation operation, IMethodSymbol method, bool and, object? left, Frame frame)
    {
        if (left is Unknown)
        {
            Skip(operation.RightOperand);
            return left;
        }

        foreach (var member in method.ContainingType.GetMembers(and ? "op_False" : "op_True"))
        {
            if (member is IMethodSymbol test)
            {
                return CallOperator(test, [left], operation, frame) switch
                {
                    true => left,
                    false => CallOperator(method, [left, Evaluate(operation.RightOperand, frame)], operation, frame),
                    _ => throw new RefusedSignal(),
                };
            }
        }

        return Refuse(operation, frame, "a conditional operator of the type's own is not evaluated", "write a conditional expression");
    }

    /// <summary>An operator that an interface declares, on the type that stands for the type parameter.</summary>
    private IMethodSymbol? OperatorOn(IMethodSymbol? method, ITypeSymbol? constrained, Frame frame) =>
        method is not null && constrained is not null && Constrained(constrained, method, frame) is { } found ? found : method;

    /// <summary>A binary operator on evaluated operands: built in, of the source or of a library.</summary>
    private object? Operate(BinaryOperatorKind kind, object? left, object? right, IMethodSymbol? method, bool lifted, bool isChecked, ITypeSymbol? leftType, ITypeSymbol? rightType, ITypeSymbol? resultType, IOperation at, Frame frame)
    {
        if (left is Unknown || right is Unknown)
        {
            return Unknown.Value;
        }

        var equality = kind is BinaryOperatorKind.Equals or BinaryOperatorKind.NotEquals;
        if (lifted && (left is null || right is null))
        {
            return Lifted(kind, left, right);
        }

        if (method is not null && !IsStringEquality(method))
        {
            return CallOperator(method, [left, right], at, frame);
        }

        // As objects, values are compared by reference.
        if (equality && leftType is { IsReferenceType: true, SpecialType: not SpecialType.System_String } && rightType is { IsReferenceType: true, SpecialType: not SpecialType.System_String })
        {
            return ReferencesEqual(kind, left, right, at, frame);
        }

        if (left is string || right is string || leftType?.SpecialType == SpecialType.System_String || rightType?.SpecialType == SpecialType.System_String)
        {
            if (kind == BinaryOperatorKind.Add)
            {
                return Concatenate(left, right, at, frame);
            }

            if (equality && (left is string or null) && (right is string or null))
            {
                return string.Equals((string?)left, (string?)right, StringComparison.Ordinal) == (kind == BinaryOperatorKind.Equals);
            }
        }

        if (leftType?.TypeKind == TypeKind.Enum || rightType?.TypeKind == TypeKind.Enum || left is UserEnum or Enum || right is UserEnum or Enum)
        {
            return left is not null && right is not null ? OperateEnum(kind, left, right, resultType, isChecked, at, frame) : equality ? kind == BinaryOperatorKind.NotEquals : null;
        }

        if (left is not null && right is not null && Plain(kind, left, right, isChecked, at, frame) is { } value)
        {
            return value;
        }

        return equality ? ReferencesEqual(kind, left, right, at, frame) : Refuse(at, frame, $"the operator '{kind}' is not evaluated for these operands", "write the value itself");
    }

    private static bool IsStringEquality(IMethodSymbol method) => method.ContainingType.SpecialType is SpecialType.System_String or SpecialType.System_Object;

    private object? Plain(BinaryOperatorKind kind, object left, object right, bool isChecked, IOperation at, Frame frame)
    {
        Exception raised;
        try
        {
            return Arithmetic.Binary(kind, left, right, isChecked);
        }
        catch (ArithmeticException exception)
        {
            raised = exception;
        }

        throw Raise(raised, at, frame);
    }

    private static object? Lifted(BinaryOperatorKind kind, object? left, object? right)
    {
        switch (kind)
        {
            case BinaryOperatorKind.Equals:
                return left is null && right is null;
            case BinaryOperatorKind.NotEquals:
                return left is not null || right is not null;
            case BinaryOperatorKind.LessThan or BinaryOperatorKind.LessThanOrEqual or BinaryOperatorKind.GreaterThan or BinaryOperatorKind.GreaterThanOrEqual:
                return false;
            case BinaryOperatorKind.And when left is false || right is false:
                return false;
            case BinaryOperatorKind.Or when left is true || right is true:
                return true;
            default:
                return null;
        }
    }

    private object? OperateEnum(BinaryOperatorKind kind, object left, object right, ITypeSymbol? resultType, bool isChecked, IOperation at, Frame frame)
    {
        var a = Enums.Underlying(left)!;
        var b = Enums.Underlying(right)!;
        var result = Underlying(resultType) is { TypeKind: TypeKind.Enum } named ? named : null;
        var wide = a is ulong || b is ulong;
        if (wide)
        {
            a = a is ulong ? a : unchecked((ulong)Enums.Bits(a));
            b = b is ulong ? b : unchecked((ulong)Enums.Bits(b));
        }
        else
        {
            a = Enums.Bits(a);
            b = Enums.Bits(b);
        }

        var value = Plain(kind, a, b, isChecked, at, frame);
        if (value is null or bool)
        {
            return value ?? Refuse(at, frame, $"the operator '{kind}' is not evaluated for these operands", "write the value itself");
        }

        var special = (result as INamedTypeSymbol)?.EnumUnderlyingType?.SpecialType ?? Underlying(resultType)?.SpecialType ?? SpecialType.System_Int32;
        var narrow = Arithmetic.Convert(value, special, isChecked && !wide);
        return result is not null ? EnumValue(result, narrow) : narrow;
    }

    private static ITypeSymbol? Underlying(ITypeSymbol? type) =>
        type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } nullable ? nullable.TypeArguments[0] : type;

    private object? ReferencesEqual(BinaryOperatorKind kind, object? left, object? right, IOperation at, Frame frame)
    {
        if ((left is ValueType && right is ValueType) || (left is string && right is string) || (left is UserObject { Type.IsValueType: true } && right is UserObject { Type.IsValueType: true }))
        {
            return Refuse(at, frame, "boxed values are compared by reference", "compare with Equals");
        }

        if (left is Delegate && right is Delegate && !ReferenceEquals(left, right))
        {
            return Refuse(at, frame, "delegates are not compared", "compare values instead");
        }

        return ReferenceEquals(left, right) == (kind == BinaryOperatorKind.Equals);
    }

    private object? Concatenate(object? left, object? right, IOperation at, Frame frame)
    {
        var a = Text(left, null, at, frame);
        var b = Text(right, null, at, frame);
        if (a is not string first || b is not string second)
        {
            return Unknown.Value;
        }

        return Checked(first, second, at, frame);
    }

    private string Checked(string first, string second, IOperation at, Frame frame)
    {
        if ((long)first.Length + second.Length > limits.Text)
        {
            throw OverText(at, frame);
        }

        Charge((first.Length + second.Length) / 16, at, frame);
        return first + second;
    }

    private object? Unary(IUnaryOperation operation, Frame frame)
    {
        var operand = Evaluate(operation.Operand, frame);
        if (operand is Unknown || (operation.IsLifted && operand is null))
        {
            return operand;
        }

        if (OperatorOn(operation.OperatorMethod, operation.ConstrainedToType, frame) is { } method)
        {
            return CallOperator(method, [operand], operation, frame);
        }

        return operation.OperatorKind == UnaryOperatorKind.Hat
            ? operand is int offset ? new IndexValue(offset, true) : Unknown.Value
            : ApplyUnary(operation.OperatorKind, operand, operation.Type, operation.IsChecked, operation, frame);
    }

    private object? ApplyUnary(UnaryOperatorKind kind, object? operand, ITypeSymbol? type, bool isChecked, IOperation at, Frame frame)
    {
        if (operand is UserEnum or Enum && Underlying(type) is INamedTypeSymbol { TypeKind: TypeKind.Enum } named)
        {
            return kind == UnaryOperatorKind.BitwiseNegation
                ? EnumValue(named, Enums.FromBits(~Enums.Bits(Enums.Underlying(operand)!), named.EnumUnderlyingType!.SpecialType))
                : Refuse(at, frame, $"the operator '{kind}' is not evaluated for this operand", "write the value itself");
        }

        Exception raised;
        try
        {
            return operand is not null && Arithmetic.Unary(kind, operand, isChecked) is { } value
                ? value
                : Refuse(at, frame, $"the operator '{kind}' is not evaluated for this operand", "write the value itself");
        }
        catch (OverflowException exception)
        {
            raised = exception;
        }

        throw Raise(raised, at, frame);
    }

    private object? CallOperator(IMethodSymbol method, object?[] operands, IOperation at, Frame frame)
    {
        method = Resolve(method, frame);
        if (types.IsSource(method))
        {
            return CallSource(method, null, operands, at, frame);
        }

        return CallLibrary(method, null, operands, at, frame);
    }
}
