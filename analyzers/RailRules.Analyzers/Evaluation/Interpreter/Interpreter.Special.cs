using System.Reflection;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <content>Listed library members that are carried out here, because reflection would do it differently from the program.</content>
internal sealed partial class Interpreter
{
    /// <summary>A member's value in a box, so that null is a value too; null where the member has no special handling.</summary>
    private Box? Special(IMethodSymbol method, MethodBase target, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        var type = target.DeclaringType!;
        if (type == typeof(Placement))
        {
            return target.Name == nameof(Placement.As) && arguments[0] is { } part ? new Box(Placed(part, (string?)arguments[1], at, frame)) : null;
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Nullable<>))
        {
            return OnPresentNullable(method, self!, arguments, at, frame);
        }

        // Nullable stands as its value here, whose type has these methods too.
        if (method.ContainingType.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T)
        {
            return OnPresentNullable(method, self ?? arguments[0]!, arguments, at, frame);
        }

        if (target.Name is "ToString" && self is not null)
        {
            return TextOf(self, target, arguments, at, frame);
        }

        if (type == typeof(Enumerable) && target.Name is "OfType" or "Cast" && (types.IsSource(method.TypeArguments[0]) || MentionsSource(method.TypeArguments[0])))
        {
            return new Box(OfSourceType(method, arguments[0], target.Name == "Cast", at, frame));
        }

        if (target.Name == "OfType" && type is { IsGenericType: true } && type.GetGenericTypeDefinition() == typeof(System.Collections.Immutable.ImmutableArray<>) && (types.IsSource(method.TypeArguments[0]) || MentionsSource(method.TypeArguments[0])))
        {
            return new Box(OfSourceType(method, self, cast: false, at, frame));
        }

        if (type == typeof(string))
        {
            return OnString(target, arguments, at, frame);
        }

        return null;
    }

    /// <summary>OfType and Cast to types that are one and the same to the library.</summary>
    private object? OfSourceType(IMethodSymbol method, object? sequence, bool cast, IOperation at, Frame frame)
    {
        var wanted = method.TypeArguments[0];
        if (sequence is null)
        {
            throw Raise(new ArgumentNullException("source"), at, frame);
        }

        if (types.Find(wanted) is not { } real)
        {
            return Refuse(at, frame, $"'{wanted.ToDisplayString()}' is not evaluated here", "write a loop");
        }

        return Sequences.Of(real).Lazy(Filtered((System.Collections.IEnumerable)sequence, wanted, cast, at, frame));
    }

    private IEnumerable<object?> Filtered(System.Collections.IEnumerable sequence, ITypeSymbol wanted, bool cast, IOperation at, Frame frame)
    {
        foreach (var item in sequence)
        {
            Step(at, frame);
            var matches = IsInstance(item, wanted, at, frame);
            if (matches is Unknown)
            {
                throw new UnknownSignal(false);
            }

            if (matches is true || (cast && item is null && !wanted.IsValueType))
            {
                yield return item;
            }
            else if (cast)
            {
                throw Raise(item is null ? new NullReferenceException() : BadCast(item, wanted), at, frame);
            }
        }
    }

    /// <summary>Spans stand as arrays here.</summary>
    private object? OnSpan(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        var array = self as Array ?? Array.Empty<object>();
        switch (method.Name)
        {
            case "get_Length":
                return array.Length;
            case "get_IsEmpty":
                return array.Length == 0;
            case "get_Item" when arguments[0] is int index:
                return GetElement(array, [index], at, frame);
            case "ToArray":
                return SliceArray(array, new RangeValue(new IndexValue(0, false), new IndexValue(0, true)), at, frame);
            case "Slice" when method.ContainingType.Name == "ReadOnlySpan" && arguments is [int start, ..]:
                var length = arguments.Length == 2 ? (int)arguments[1]! : array.Length - start;
                if (start < 0 || length < 0 || start > array.Length - length)
                {
                    throw Raise(new ArgumentOutOfRangeException(), at, frame);
                }

                // The part is a copy here: what it is a part of may not change from now on.
                Provenance.Freeze(array);
                return SliceArray(array, new RangeValue(new IndexValue(start, false), new IndexValue(start + length, false)), at, frame);
            case "op_Implicit" when arguments is [Array given]:
                return given;
            default:
                return Refuse(at, frame, $"'{method.ContainingType.Name}.{method.Name}' is not on the list of members that are evaluated", "use an array");
        }
    }

    /// <summary>Members of indexes and ranges, which stand as values of this namespace.</summary>
    private object? OnIndex(IMethodSymbol method, object? self, object?[] arguments, IOperation at, Frame frame)
    {
        if (HasUnknown(arguments))
        {
            return Unknown.Value;
        }

        switch (method.Name, self, arguments)
        {
            case (".ctor", _, [int value, bool fromEnd]):
                return value >= 0 ? new IndexValue(value, fromEnd) : throw Raise(new ArgumentOutOfRangeException("value", "Non-negative number required."), at, frame);
            case (".ctor", _, [IndexValue start, IndexValue end]):
                return new RangeValue(start, end);
            case ("get_Value", IndexValue index, _):
                return index.Value;
            case ("get_IsFromEnd", IndexValue index, _):
                return index.FromEnd;
            case ("GetOffset", IndexValue index, [int length]):
                return index.Offset(length);
            case ("get_Start", RangeValue range, _):
                return range.Start;
            case ("get_End", RangeValue range, _):
                return range.End;
            case ("Equals", IndexValue or RangeValue, [var other]):
                return self!.Equals(other);
            case ("ToString", IndexValue or RangeValue, []):
                return self!.ToString();
            default:
                return Refuse(at, frame, $"'{LibraryMembers.DisplayName(method)}' is not on the list of members that are evaluated", "use the numbers themselves");
        }
    }

    /// <summary>Whether a collection gives its elements in the order of their hash codes, which a program does not know.</summary>
    private static bool IsOrderedByHash(object? value) =>
        value?.GetType() is { IsGenericType: true, Namespace: "System.Collections.Immutable" } type && (type.Name.StartsWith("ImmutableDictionary`", StringComparison.Ordinal) || type.Name.StartsWith("ImmutableHashSet`", StringComparison.Ordinal));

    private object Placed(object part, string? designator, IOperation at, Frame frame)
    {
        var copy = Clone(part);
        copy.GetType().GetProperty(nameof(Element.Designator))!.SetValue(copy, designator);
        var origin = new Origin(at.Syntax, frame.Activation.Site, run.Member);
        var record = Provenance.EnterCopy(copy, part, origin);
        var syntax = at is Microsoft.CodeAnalysis.Operations.IInvocationOperation { Arguments: [_, var designatorArgument] } ? designatorArgument.Value.Syntax : at.Syntax;
        record.Set(nameof(Element.Designator), new Origin(syntax, frame.Activation.Site, run.Member));
        return copy;
    }

    private Box? OnPresentNullable(IMethodSymbol method, object self, object?[] arguments, IOperation at, Frame frame)
    {
        switch (method.Name)
        {
            case ".ctor":
                return new Box(arguments[0]);
            case "get_HasValue":
                return new Box(true);
            case "get_Value" or "GetValueOrDefault":
                return new Box(self);
            case "ToString":
                return new Box(Text(self, null, at, frame));
            case "Equals":
                return new Box(InLibrary(() => Equals(self, arguments[0]), at, frame));
            default:
                return null;
        }
    }

    /// <summary>Text without culture.</summary>
    private Box? TextOf(object self, MethodBase target, object?[] arguments, IOperation at, Frame frame)
    {
        if (self is string or System.Text.StringBuilder or Source)
        {
            return null;
        }

        string? format = null;
        foreach (var argument in arguments)
        {
            switch (argument)
            {
                case string text:
                    format = text;
                    break;
                case IFormatProvider and not System.Globalization.CultureInfo { Name: "" }:
                    return new Box(Refuse(at, frame, Objection.Culture.Reason, Objection.Culture.Remedy));
            }
        }

        return new Box(Text(self, format, at, frame));
    }

    private Box? OnString(MethodBase target, object?[] arguments, IOperation at, Frame frame)
    {
        switch (target.Name)
        {
            case "Concat":
                return new Box(JoinTexts("", Items(arguments, 0), at, frame));
            case "Join":
                var separator = arguments[0] is char letter ? letter.ToString() : (string?)arguments[0];
                return arguments.Length == 2 ? new Box(JoinTexts(separator ?? "", Items(arguments, 1), at, frame)) : null;
            case "Format":
                return new Box(Formatted(arguments, at, frame));
            default:
                return null;
        }
    }

    private static IEnumerable<object?> Items(object?[] arguments, int first) =>
        arguments.Length == first + 1 && arguments[first] is System.Collections.IEnumerable sequence and not string ? sequence.Cast<object?>() : arguments.Skip(first);

    private object? JoinTexts(string separator, IEnumerable<object?> items, IOperation at, Frame frame)
    {
        var builder = new System.Text.StringBuilder();
        var first = true;
        foreach (var item in InLibrary(items, at, frame))
        {
            if (item is Unknown || Text(item, null, at, frame) is not string text)
            {
                return Unknown.Value;
            }

            if (!first)
            {
                builder.Append(separator);
            }

            first = false;
            builder.Append(text);
            if (builder.Length > limits.Text)
            {
                throw OverText(at, frame);
            }

            Charge(1 + (text.Length / 16), at, frame);
        }

        return builder.ToString();
    }

    private sealed class Box(object? value)
    {
        public object? Value { get; } = value;
    }
}
