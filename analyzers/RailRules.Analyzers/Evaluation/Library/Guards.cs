using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Looks at the arguments of a listed member before it is called.</summary>
/// <returns>Null where the call may go ahead.</returns>
internal delegate Objection? Guard(object? self, object?[] arguments, EvaluationLimits limits);

/// <summary>Why a call may not go ahead.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="Remedy">What to write instead.</param>
/// <param name="IsBudget">Whether it would exceed the budget.</param>
internal sealed record Objection(string Reason, string Remedy, bool IsBudget)
{
    public static readonly Objection Text = new("a text would be longer than the limit", "write a shorter text", true);
    public static readonly Objection Elements = new("a collection would have more elements than the limit", "use fewer elements", true);
    public static readonly Objection Culture = new("only the invariant culture is evaluated", "use CultureInfo.InvariantCulture, or leave it out", false);
    public static readonly Objection Comparison = new("only ordinal comparisons of text are evaluated", "use StringComparison.Ordinal or StringComparison.OrdinalIgnoreCase", false);
    public static readonly Objection Boxes = new("boxed values are compared by reference", "compare with Equals", false);
    public static readonly Objection Order = new("the order of texts depends on culture", "give StringComparer.Ordinal", false);
}

/// <summary>The guards of members whose work, memory or meaning depends on their arguments.</summary>
internal static class Guards
{
    public static Guard? For(MethodBase method)
    {
        var type = method.DeclaringType!;
        Guard? guard = null;
        foreach (var parameter in method.GetParameters())
        {
            if (parameter.ParameterType == typeof(IFormatProvider) || parameter.ParameterType == typeof(CultureInfo))
            {
                guard += Provider;
            }
            else if (parameter.ParameterType == typeof(StringComparison))
            {
                guard += ComparisonKind;
            }
            else if (parameter.ParameterType == typeof(string) && parameter.Name == "format")
            {
                guard += Format;
            }
        }

        if (type == typeof(object) && method.Name == nameof(ReferenceEquals))
        {
            guard += static (_, arguments, _) => Array.Exists(arguments, argument => argument is ValueType or string or UserObject { Type.IsValueType: true }) ? Objection.Boxes : null;
        }
        else if (type == typeof(string))
        {
            guard += OfString(method);
        }
        else if (type == typeof(StringBuilder))
        {
            guard += OfBuilder(method);
        }
        else if (type == typeof(Enumerable) && method.Name is "Range" or "Repeat")
        {
            guard += static (_, arguments, limits) => arguments[1] is int count && count > limits.Elements ? Objection.Elements : null;
        }
        else if (method.Name is "OrderBy" or "OrderByDescending" or "ThenBy" or "ThenByDescending" or "Order" or "OrderDescending" or "Sort" or "Max" or "Min" or "MaxBy" or "MinBy" or "BinarySearch"
            && type.Assembly != typeof(Rail).Assembly)
        {
            guard += Ordered(method);
        }
        else if (type.IsGenericType && type.GetGenericTypeDefinition() is var definition && (definition == typeof(SortedDictionary<,>) || definition == typeof(SortedSet<>)) && method.IsConstructor)
        {
            guard += Ordered(method);
        }
        else if ((method.IsConstructor || method.Name is "CreateBuilder") && method.GetParameters() is [{ } first, ..] && first.ParameterType == typeof(int)
            && (typeof(IEnumerable).IsAssignableFrom(type) || method.Name == "CreateBuilder"))
        {
            guard += static (_, arguments, limits) => arguments[0] is int capacity && capacity > limits.Elements ? Objection.Elements : null;
        }

        return guard is null ? null : Combined(guard);
    }

    private static Guard Combined(Guard guards)
    {
        var all = guards.GetInvocationList();
        if (all.Length == 1)
        {
            return guards;
        }

        return (self, arguments, limits) =>
        {
            foreach (var guard in all)
            {
                if (((Guard)guard)(self, arguments, limits) is { } objection)
                {
                    return objection;
                }
            }

            return null;
        };
    }

    private static Objection? Provider(object? self, object?[] arguments, EvaluationLimits limits)
    {
        foreach (var argument in arguments)
        {
            if (argument is IFormatProvider and not CultureInfo { Name: "" })
            {
                return Objection.Culture;
            }
        }

        return null;
    }

    private static Objection? ComparisonKind(object? self, object?[] arguments, EvaluationLimits limits)
    {
        foreach (var argument in arguments)
        {
            if (argument is StringComparison and not (StringComparison.Ordinal or StringComparison.OrdinalIgnoreCase))
            {
                return Objection.Comparison;
            }
        }

        return null;
    }

    /// <summary>Format strings can ask for a thousand million digits.</summary>
    private static Objection? Format(object? self, object?[] arguments, EvaluationLimits limits)
    {
        foreach (var argument in arguments)
        {
            if (argument is string format && LargestNumber(format) > 10_000)
            {
                return Objection.Text;
            }
        }

        return null;
    }

    /// <summary>The largest number written in a text.</summary>
    public static int LargestNumber(string text)
    {
        var largest = 0;
        var number = 0;
        foreach (var letter in text)
        {
            number = letter is >= '0' and <= '9' ? Math.Min((number * 10) + letter - '0', 10_000_000) : 0;
            largest = Math.Max(largest, number);
        }

        return largest;
    }

    private static Guard? OfString(MethodBase method)
    {
        switch (method.Name)
        {
            case ".ctor":
                return static (_, arguments, limits) => arguments is [char, int count] && count > limits.Text ? Objection.Text : null;
            case "PadLeft" or "PadRight":
                return static (_, arguments, limits) => arguments[0] is int width && width > limits.Text ? Objection.Text : null;
            case "Replace":
                return static (self, arguments, limits) => arguments is [string old, string with, ..] && self is string text && old.Length > 0 && (long)(text.Length / old.Length) * with.Length > limits.Text ? Objection.Text : null;
            case "Insert":
                return static (self, arguments, limits) => self is string text && arguments[1] is string more && (long)text.Length + more.Length > limits.Text ? Objection.Text : null;
            case "Concat" or "Join":
                return static (_, arguments, limits) => Length(arguments, limits.Text) > limits.Text ? Objection.Text : null;
            case "StartsWith" or "EndsWith" or "IndexOf" or "LastIndexOf" when method.GetParameters() is [{ } first, ..] && first.ParameterType == typeof(string) && !Compares(method):
                return static (self, arguments, _) => self is string text && arguments[0] is string part && IsPlainAscii(text) && IsPlainAscii(part) && part.Length > 0 ? null : Objection.Comparison;
            case "Compare" when !Compares(method):
            case "CompareTo":
                return static (_, _, _) => Objection.Comparison;
            default:
                return null;
        }
    }

    private static bool Compares(MethodBase method)
    {
        foreach (var parameter in method.GetParameters())
        {
            if (parameter.ParameterType == typeof(StringComparison))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Printable ASCII, in which a search by the invariant culture finds what an ordinal search finds.</summary>
    private static bool IsPlainAscii(string text)
    {
        foreach (var letter in text)
        {
            if (letter is < ' ' or > '~')
            {
                return false;
            }
        }

        return true;
    }

    private static long Length(object?[] arguments, long limit)
    {
        long length = 0;
        long separator = arguments.Length > 0 && arguments[0] is string first ? first.Length : 0;
        foreach (var argument in arguments)
        {
            switch (argument)
            {
                case string text:
                    length += text.Length;
                    break;
                case Array array:
                    foreach (var item in array)
                    {
                        length += separator + (item is string text ? text.Length : 32);
                    }

                    break;
                case ICollection collection:
                    length += collection.Count * (separator + 32);
                    foreach (var item in collection)
                    {
                        length += item is string text ? text.Length : 0;
                    }

                    break;
            }

            if (length > limit)
            {
                break;
            }
        }

        return length;
    }

    private static Guard? OfBuilder(MethodBase method)
    {
        switch (method.Name)
        {
            case ".ctor":
                return static (_, arguments, limits) =>
                {
                    foreach (var argument in arguments)
                    {
                        if (argument is int capacity && capacity > limits.Text)
                        {
                            return Objection.Text;
                        }
                    }

                    return null;
                };
            case "Append" or "AppendLine" or "AppendJoin" or "Insert":
                return static (self, arguments, limits) => self is StringBuilder builder && builder.Length + Length(arguments, limits.Text) + (arguments is [char, int count] ? count : 0L) > limits.Text ? Objection.Text : null;
            case "Replace":
                return static (self, arguments, limits) => arguments is [string old, string with, ..] && self is StringBuilder builder && old.Length > 0 && (long)(builder.Length / old.Length) * with.Length > limits.Text ? Objection.Text : null;
            default:
                return null;
        }
    }

    /// <summary>Text in the default order is ordered by culture.</summary>
    private static Guard Ordered(MethodBase method) => (self, arguments, _) =>
    {
        var parameters = method.GetParameters();
        for (var i = 0; i < parameters.Length; i++)
        {
            var name = parameters[i].ParameterType.Name;
            if (arguments[i] is not null && (name.StartsWith("IComparer", StringComparison.Ordinal) || name.StartsWith("Comparison", StringComparison.Ordinal)))
            {
                return null; // an order is given
            }
        }

        if (self is not null || method.IsConstructor)
        {
            var of = (self?.GetType() ?? method.DeclaringType!).GetGenericArguments();
            return of.Length > 0 && HoldsText(of[0]) ? Objection.Order : null;
        }

        // With a selector its result is what is ordered, else the elements are.
        foreach (var argument in arguments)
        {
            if (argument is Delegate { Method.ReturnType: { } result })
            {
                return HoldsText(result) ? Objection.Order : null;
            }
        }

        return arguments.Length > 0 && arguments[0] is { } sequence && ElementType(sequence.GetType()) is { } element && HoldsText(element) ? Objection.Order : null;
    };

    private static bool HoldsText(Type type)
    {
        if (type == typeof(string))
        {
            return true;
        }

        foreach (var argument in type.IsGenericType ? type.GetGenericArguments() : [])
        {
            if (HoldsText(argument))
            {
                return true;
            }
        }

        return false;
    }

    private static Type? ElementType(Type sequence)
    {
        foreach (var implemented in sequence.GetInterfaces())
        {
            if (implemented.IsGenericType && implemented.GetGenericTypeDefinition() == typeof(IEnumerable<>))
            {
                return implemented.GetGenericArguments()[0];
            }
        }

        return null;
    }
}
