using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Interpolated strings that the compiler gives to a handler, or as a formattable string, where the result is plain text in the invariant culture.</content>
internal sealed partial class Interpreter
{
    /// <summary>Carries out a call that takes an interpolated string by handler; null where the call takes none.</summary>
    private Box? WithHandler(IInvocationOperation operation, IMethodSymbol method, Frame frame)
    {
        if (method is { Name: "Invariant", IsStatic: true, ContainingType: { Name: "FormattableString", ContainingNamespace.Name: "System" } } &&
            operation.Arguments is [{ Value: IConversionOperation { Operand: IInterpolatedStringOperation text } }])
        {
            return new Box(Evaluate(text, frame));
        }

        IInterpolatedStringHandlerCreationOperation? handler = null;
        foreach (var argument in operation.Arguments)
        {
            handler ??= HandlerOf(argument.Value);
        }

        if (handler is null || types.IsSource(method))
        {
            return null;
        }

        return method.ContainingType switch
        {
            { SpecialType: SpecialType.System_String } when method.Name == "Create" => new Box(HandledText(operation, handler, new StringBuilder(), frame)?.ToString() ?? (object)Unknown.Value),
            { Name: "StringBuilder", ContainingNamespace.Name: "Text" } when method.Name is "Append" or "AppendLine" => new Box(AppendHandled(operation, method, handler, frame)),
            _ => new Box(Refuse(operation, frame, "interpolated string handlers are not evaluated", "use a plain interpolated string")),
        };
    }

    private static IInterpolatedStringHandlerCreationOperation? HandlerOf(IOperation value)
    {
        while (value is IConversionOperation conversion)
        {
            value = conversion.Operand;
        }

        return value as IInterpolatedStringHandlerCreationOperation;
    }

    private object? AppendHandled(IInvocationOperation operation, IMethodSymbol method, IInterpolatedStringHandlerCreationOperation handler, Frame frame)
    {
        switch (operation.Instance is { } instance ? Evaluate(instance, frame) : Unknown.Value)
        {
            case null:
                throw Raise(new NullReferenceException(), operation, frame);
            case StringBuilder builder:
                if (!Provenance.IsMadeBy(builder, run))
                {
                    return RefuseMutation(builder, operation, frame);
                }

                if (HandledText(operation, handler, builder, frame) is null)
                {
                    throw new RefusedSignal();
                }

                return method.Name == "AppendLine" ? builder.AppendLine() : builder;
            default:
                throw new RefusedSignal();
        }
    }

    /// <summary>Appends the text part by part, as a handler does; null where a part is unknown.</summary>
    private StringBuilder? HandledText(IInvocationOperation operation, IInterpolatedStringHandlerCreationOperation handler, StringBuilder builder, Frame frame)
    {
        foreach (var argument in operation.Arguments)
        {
            if (ReferenceEquals(HandlerOf(argument.Value), handler))
            {
                continue;
            }

            switch (Evaluate(argument.Value, frame))
            {
                case null or CultureInfo { Name: "" }:
                    break;
                case Unknown:
                    return null;
                default:
                    Refuse(operation, frame, Objection.Culture.Reason, Objection.Culture.Remedy);
                    return null;
            }
        }

        return AppendContent(handler.Content, builder, frame) ? builder : null;
    }

    private bool AppendContent(IOperation content, StringBuilder builder, Frame frame)
    {
        switch (content)
        {
            case IInterpolatedStringAdditionOperation sum:
                return AppendContent(sum.Left, builder, frame) && AppendContent(sum.Right, builder, frame);
            case IInterpolatedStringOperation text:
                foreach (var part in text.Parts)
                {
                    if (part is not IInterpolatedStringAppendOperation { AppendCall: IInvocationOperation call } || AppendedText(call, frame) is not string written)
                    {
                        return false;
                    }

                    builder.Append(written);
                    if (builder.Length > limits.Text)
                    {
                        throw OverText(content, frame);
                    }

                    Charge(written.Length / 16, content, frame);
                }

                return true;
            default:
                Refuse(content, frame, "interpolated string handlers are not evaluated", "use a plain interpolated string");
                return false;
        }
    }

    private object? AppendedText(IInvocationOperation call, Frame frame)
    {
        object? value = null;
        string? format = null;
        var width = 0;
        foreach (var argument in call.Arguments)
        {
            var given = Evaluate(argument.Value, frame);
            switch (argument.Parameter?.Name)
            {
                case "value":
                    value = given;
                    break;
                case "format":
                    format = given as string;
                    break;
                case "alignment" when given is int number:
                    width = number;
                    break;
                default:
                    return Refuse(call, frame, "interpolated string handlers are not evaluated", "use a plain interpolated string");
            }
        }

        return Text(value, format, call, frame) is string text ? width == 0 ? text : Aligned(text, width, call, frame) : Unknown.Value;
    }
}
