using System.Collections;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Patterns. A match is true, false or unknown.</content>
internal sealed partial class Interpreter
{
    private object? IsPattern(IIsPatternOperation operation, Frame frame)
    {
        var value = Evaluate(operation.Value, frame);
        return value is Unknown ? value : Match(operation.Pattern, value, frame);
    }

    private object? IsType(IIsTypeOperation operation, Frame frame)
    {
        var value = Evaluate(operation.ValueOperand, frame);
        if (value is Unknown)
        {
            return value;
        }

        var result = IsInstance(value, Resolve(operation.TypeOperand, frame), operation, frame);
        return result is bool truth ? truth != operation.IsNegated : result;
    }

    private object? SwitchExpression(ISwitchExpressionOperation operation, Frame frame)
    {
        var value = Evaluate(operation.Value, frame);
        if (value is Unknown)
        {
            foreach (var arm in operation.Arms)
            {
                Skip(arm.Value);
            }

            return value;
        }

        foreach (var arm in operation.Arms)
        {
            var inner = arm.Locals.IsEmpty ? frame : new Frame(frame, frame.Activation);
            var matched = Match(arm.Pattern, value, inner);
            if (matched is true && arm.Guard is { } guard)
            {
                matched = Evaluate(guard, inner);
            }

            switch (matched)
            {
                case true:
                    return Evaluate(arm.Value, inner);
                case false:
                    continue;
                default:
                    return Unknown.Value;
            }
        }

        throw new ThrowSignal("System.Runtime.CompilerServices.SwitchExpressionException", "Non-exhaustive switch expression failed to match its input.", OriginAt(operation, frame));
    }

    private object? Match(IPatternOperation pattern, object? value, Frame frame)
    {
        Step(pattern, frame);
        System.Runtime.CompilerServices.RuntimeHelpers.EnsureSufficientExecutionStack();
        switch (pattern)
        {
            case IConstantPatternOperation constant:
                return MatchConstant(constant, value, frame);
            case IDeclarationPatternOperation declaration:
                return MatchDeclaration(declaration, value, frame);
            case ITypePatternOperation type:
                return IsInstance(value, Resolve(type.MatchedType, frame), type, frame);
            case IDiscardPatternOperation:
                return true;
            case INegatedPatternOperation negated:
                return Match(negated.Pattern, value, frame) is bool truth ? !truth : Unknown.Value;
            case IBinaryPatternOperation binary:
                return MatchBinary(binary, value, frame);
            case IRelationalPatternOperation relational:
                return MatchRelational(relational, value, frame);
            case IRecursivePatternOperation recursive:
                return MatchRecursive(recursive, value, frame);
            case IListPatternOperation list:
                return MatchList(list, value, frame);
            default:
                return Refuse(pattern, frame, "this pattern is not evaluated", "write a comparison");
        }
    }

    private object? MatchConstant(IConstantPatternOperation pattern, object? value, Frame frame)
    {
        var wanted = Evaluate(pattern.Value, frame);
        return wanted is Unknown ? wanted : SameConstant(value, wanted);
    }

    /// <summary>Whether a value is the constant: equal and of the same type.</summary>
    private static bool SameConstant(object? value, object? constant)
    {
        if (value is null || constant is null)
        {
            return value is null && constant is null;
        }

        if (value is UserEnum or Enum || constant is UserEnum or Enum)
        {
            return value is UserEnum left && constant is UserEnum right ? left.Equals(right) : value.Equals(constant);
        }

        // Equals, not ==, so that NaN matches NaN as patterns do.
        return value.Equals(constant);
    }

    private object? MatchDeclaration(IDeclarationPatternOperation pattern, object? value, Frame frame)
    {
        var matched = pattern.MatchesNull || pattern.MatchedType is null
            ? true
            : IsInstance(value, Resolve(pattern.MatchedType, frame), pattern, frame);
        if (matched is true && pattern.DeclaredSymbol is { } declared)
        {
            frame.Declare(declared, value);
        }

        return matched;
    }

    private object? MatchBinary(IBinaryPatternOperation pattern, object? value, Frame frame)
    {
        var left = Match(pattern.LeftPattern, value, frame);
        if (left is not bool truth || truth == (pattern.OperatorKind == BinaryOperatorKind.Or))
        {
            return left;
        }

        return Match(pattern.RightPattern, value, frame);
    }

    private object? MatchRelational(IRelationalPatternOperation pattern, object? value, Frame frame)
    {
        var bound = Evaluate(pattern.Value, frame);
        if (bound is Unknown)
        {
            return bound;
        }

        if (value is null || bound is null)
        {
            return false;
        }

        if (value is UserEnum or Enum)
        {
            return OperateEnum(pattern.OperatorKind, value, bound, null, false, pattern, frame);
        }

        return value.GetType() == bound.GetType() ? Arithmetic.Binary(pattern.OperatorKind, value, bound, false) ?? false : false;
    }

    private object? MatchRecursive(IRecursivePatternOperation pattern, object? value, Frame frame)
    {
        if (value is null)
        {
            return false;
        }

        if (pattern.MatchedType is { } type && !SymbolEqualityComparer.Default.Equals(type, pattern.InputType))
        {
            var isType = IsInstance(value, Resolve(type, frame), pattern, frame);
            if (isType is not true)
            {
                return isType;
            }
        }

        if (pattern.DeconstructionSubpatterns.Length > 0 || pattern.DeconstructSymbol is not null)
        {
            var matched = MatchParts(pattern, value, frame);
            if (matched is not true)
            {
                return matched;
            }
        }

        foreach (var part in pattern.PropertySubpatterns)
        {
            var matched = MatchProperty(part, value, frame);
            if (matched is not true)
            {
                return matched;
            }
        }

        if (pattern.DeclaredSymbol is { } declared)
        {
            frame.Declare(declared, value);
        }

        return true;
    }

    private object? MatchProperty(IPropertySubpatternOperation part, object? value, Frame frame)
    {
        frame.Activation.Implicit.Push(value);
        object? member;
        try
        {
            member = Evaluate(part.Member, frame);
        }
        finally
        {
            frame.Activation.Implicit.Pop();
        }

        return member is Unknown ? member : Match(part.Pattern, member, frame);
    }

    private object? MatchParts(IRecursivePatternOperation pattern, object value, Frame frame)
    {
        var subpatterns = pattern.DeconstructionSubpatterns;
        object?[] parts;
        if (pattern.DeconstructSymbol is IMethodSymbol method)
        {
            method = Resolve(method, frame);
            var holders = new object?[subpatterns.Length];
            for (var i = 0; i < holders.Length; i++)
            {
                holders[i] = new Holder(null);
            }

            Call(method.IsStatic ? method : Override(method, value), method.IsStatic ? null : value, method.IsStatic ? [value, .. holders] : holders, pattern, frame);
            parts = new object?[holders.Length];
            for (var i = 0; i < parts.Length; i++)
            {
                parts[i] = ((Holder)holders[i]!).Get();
            }
        }
        else if (IsTuple(value))
        {
            parts = TupleParts(value);
        }
        else if (value is UserObject)
        {
            return Refuse(pattern, frame, "this positional pattern is not evaluated", "use a property pattern");
        }
        else
        {
            return false; // an object that is no tuple
        }

        if (parts.Length != subpatterns.Length)
        {
            return false;
        }

        for (var i = 0; i < parts.Length; i++)
        {
            var matched = parts[i] is Unknown ? parts[i] : Match(subpatterns[i], parts[i], frame);
            if (matched is not true)
            {
                return matched;
            }
        }

        return true;
    }

    private object? MatchList(IListPatternOperation pattern, object? value, Frame frame)
    {
        if (value is null)
        {
            return false;
        }

        if (TypeMap.IsSpan(pattern.InputType))
        {
            if (pattern.InputType.Name == "Span")
            {
                return Refuse(pattern, frame, "this list pattern is not evaluated", "use an array or a list");
            }

            Provenance.Freeze(value);
        }

        if (ListItems(value) is not { } items)
        {
            return Refuse(pattern, frame, "this list pattern is not evaluated", "use an array or a list");
        }

        var slice = -1;
        for (var i = 0; i < pattern.Patterns.Length; i++)
        {
            slice = pattern.Patterns[i] is ISlicePatternOperation ? i : slice;
        }

        var fixedCount = pattern.Patterns.Length - (slice >= 0 ? 1 : 0);
        if (slice >= 0 ? items.Count < fixedCount : items.Count != fixedCount)
        {
            return false;
        }

        for (var i = 0; i < pattern.Patterns.Length; i++)
        {
            object? matched;
            if (pattern.Patterns[i] is ISlicePatternOperation part)
            {
                matched = part.Pattern is { } inner ? Match(inner, SliceOf(value, i, items.Count - fixedCount), frame) : true;
            }
            else
            {
                matched = Match(pattern.Patterns[i], items[slice >= 0 && i > slice ? items.Count - pattern.Patterns.Length + i : i], frame);
            }

            if (matched is not true)
            {
                return matched;
            }
        }

        if (pattern.DeclaredSymbol is { } declared)
        {
            frame.Declare(declared, value);
        }

        return true;
    }

    private static List<object?>? ListItems(object value)
    {
        if (value is string text)
        {
            var letters = new List<object?>(text.Length);
            foreach (var letter in text)
            {
                letters.Add(letter);
            }

            return letters;
        }

        if (value is not IList list)
        {
            return null;
        }

        var items = new List<object?>(list.Count);
        foreach (var item in list)
        {
            items.Add(item);
        }

        return items;
    }

    private object? SliceOf(object value, int start, int length)
    {
        switch (value)
        {
            case string text:
                return text.Substring(start, length);
            case Array array:
                var slice = Array.CreateInstance(array.GetType().GetElementType()!, length);
                Array.Copy(array, start, slice, 0, length);
                Provenance.SetMaker(slice, run);
                return slice;
            default:
                var type = value.GetType();
                if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(System.Collections.Immutable.ImmutableArray<>))
                {
                    var sequences = Sequences.Of(type.GetGenericArguments()[0]);
                    return sequences.ImmutableArray((Array)SliceOf(sequences.Underlying(value)!, start, length)!);
                }

                return Unknown.Value;
        }
    }
}
