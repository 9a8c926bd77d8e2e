using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Text: always in the invariant culture.</content>
internal sealed partial class Interpreter
{
    private const int WidestNumber = 10_000;

    private object? InterpolatedString(IInterpolatedStringOperation operation, Frame frame)
    {
        var builder = new StringBuilder();
        foreach (var part in operation.Parts)
        {
            switch (part)
            {
                case IInterpolatedStringTextOperation text:
                    builder.Append(Evaluate(text.Text, frame) as string);
                    break;
                case IInterpolationOperation interpolation:
                    if (Interpolation(interpolation, frame) is not string written)
                    {
                        return Unknown.Value;
                    }

                    builder.Append(written);
                    break;
                default:
                    return Refuse(part, frame, "interpolated string handlers are not evaluated", "use a plain interpolated string");
            }

            if (builder.Length > limits.Text)
            {
                throw OverText(operation, frame);
            }
        }

        Charge(builder.Length / 16, operation, frame);
        return builder.ToString();
    }

    private object? Interpolation(IInterpolationOperation operation, Frame frame)
    {
        var value = Evaluate(operation.Expression, frame);
        var format = operation.FormatString is { } given ? Evaluate(given, frame) as string : null;
        if (value is Unknown || Text(value, format, operation, frame) is not string text)
        {
            return Unknown.Value;
        }

        return operation.Alignment is { } alignment && Evaluate(alignment, frame) is int width ? Aligned(text, width, operation, frame) : text;
    }

    private string Aligned(string text, int width, IOperation at, Frame frame)
    {
        if (Math.Abs((long)width) > limits.Text)
        {
            throw OverText(at, frame);
        }

        return width < 0 ? text.PadRight(-width) : text.PadLeft(width);
    }

    /// <summary>A value's text as interpolation and concatenation give it, or unknown.</summary>
    private object? Text(object? value, string? format, IOperation at, Frame frame)
    {
        if (format is not null && Guards.LargestNumber(format) > WidestNumber)
        {
            throw OverText(at, frame);
        }

        switch (value)
        {
            case Unknown:
                return value;
            case null:
                return "";
            case string text:
                return text;
            case bool or char:
                return value.ToString();
            case UserObject user:
                return TextOf(user, format, at, frame);
            case Source source:
                return source.Name;
            case UnitsNet.IQuantity:
                return Refuse(at, frame, "the text of a quantity is not evaluated", "write the number and its unit, e.g. current.Amperes");
            case UserEnum or Enum or IFormattable or Exception or StringBuilder:
                return Formatted(value, format, at, frame);
            default:
                return IsTuple(value) ? TupleText(value, at, frame) : TypeText(value, at, frame);
        }
    }

    private object? TextOf(UserObject user, string? format, IOperation at, Frame frame)
    {
        // A type that formats itself does so with the format given.
        foreach (var implemented in user.Type.AllInterfaces)
        {
            if (implemented is { Name: "IFormattable", ContainingNamespace: { Name: "System", ContainingNamespace.IsGlobalNamespace: true } } &&
                implemented.GetMembers("ToString") is [IMethodSymbol formattable, ..] && user.Type.FindImplementationForInterfaceMember(formattable) is IMethodSymbol method)
            {
                return Call(Override(method, user), user, [format, null], at, frame);
            }
        }

        return ObjectText(user, at, frame);
    }

    private object? Formatted(object value, string? format, IOperation at, Frame frame)
    {
        if (value is not (UserEnum or Enum or StringBuilder or IConvertible or TimeSpan or DateTime or Exception) && value.GetType().Assembly != typeof(int).Assembly)
        {
            return TypeText(value, at, frame);
        }

        Exception raised;
        try
        {
            return value switch
            {
                UserEnum user => Enums.Text(user, format),
                Enum real => real.ToString(format),
                IFormattable formattable => formattable.ToString(format, CultureInfo.InvariantCulture),
                Exception exception => exception.Message,
                _ => value.ToString(),
            };
        }
        catch (FormatException exception)
        {
            raised = exception;
        }

        throw Raise(raised, at, frame);
    }

    private object? TupleText(object tuple, IOperation at, Frame frame)
    {
        var builder = new StringBuilder("(");
        foreach (var part in TupleParts(tuple))
        {
            if (Text(part, null, at, frame) is not string text)
            {
                return Unknown.Value;
            }

            builder.Append(builder.Length > 1 ? ", " : "").Append(text);
        }

        return builder.Append(')').ToString();
    }

    private object? TypeText(object value, IOperation at, Frame frame)
    {
        if (value is RangeValue or IndexValue)
        {
            return value.ToString();
        }

        return Refuse(at, frame, $"the text of a '{value.GetType().Name}' is not evaluated", "write the data that the text shall show");
    }

    /// <summary><c>string.Format</c> with invariant numbers.</summary>
    private object? Formatted(object?[] arguments, IOperation at, Frame frame)
    {
        var at0 = arguments[0] is null or IFormatProvider ? 1 : 0;
        if (arguments[0] is IFormatProvider and not CultureInfo { Name: "" })
        {
            return Refuse(at, frame, Objection.Culture.Reason, Objection.Culture.Remedy);
        }

        if (arguments[at0] is not string format)
        {
            throw Raise(new ArgumentNullException("format"), at, frame);
        }

        if (Guards.LargestNumber(format) > WidestNumber)
        {
            throw OverText(at, frame);
        }

        var values = arguments.Length == at0 + 2 && arguments[at0 + 1] is object?[] array ? (object?[])array.Clone() : [.. arguments.Skip(at0 + 1)];
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] is not (null or string or IConvertible or UserEnum or TimeSpan or DateTime))
            {
                if (Text(values[i], null, at, frame) is not string text)
                {
                    return Unknown.Value;
                }

                values[i] = text;
            }
        }

        Exception raised;
        try
        {
            var result = string.Format(CultureInfo.InvariantCulture, format, values);
            return result.Length > limits.Text ? throw OverText(at, frame) : result;
        }
        catch (FormatException exception)
        {
            raised = exception;
        }

        throw Raise(raised, at, frame);
    }
}
