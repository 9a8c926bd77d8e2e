using System.Globalization;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Values of enumerations, of the source's own and of the libraries'.</summary>
internal static class Enums
{
    /// <summary>The underlying value of an enumeration value, boxed; other values come back as they are.</summary>
    public static object? Underlying(object? value) => value switch
    {
        UserEnum user => FromBits(user.Bits, user.Type?.EnumUnderlyingType?.SpecialType ?? SpecialType.System_Int32),
        Enum real => Convert.ChangeType(real, Enum.GetUnderlyingType(real.GetType()), CultureInfo.InvariantCulture),
        _ => value,
    };

    public static long Bits(object value) => value switch
    {
        ulong wide => unchecked((long)wide),
        UserEnum user => user.Bits,
        char letter => letter,
        _ => Convert.ToInt64(value, CultureInfo.InvariantCulture),
    };

    public static object FromBits(long bits, SpecialType type) => type switch
    {
        SpecialType.System_SByte => unchecked((sbyte)bits),
        SpecialType.System_Byte => unchecked((byte)bits),
        SpecialType.System_Int16 => unchecked((short)bits),
        SpecialType.System_UInt16 => unchecked((ushort)bits),
        SpecialType.System_UInt32 => unchecked((uint)bits),
        SpecialType.System_Int64 => bits,
        SpecialType.System_UInt64 => unchecked((ulong)bits),
        _ => unchecked((int)bits),
    };

    /// <summary>The text of a value as <c>Enum.ToString</c> gives it: its name, its flags' names, or its number.</summary>
    public static string Text(UserEnum value, string? format = null)
    {
        var underlying = Underlying(value)!;
        switch (format)
        {
            case "D" or "d":
                return ((IFormattable)underlying).ToString("D", CultureInfo.InvariantCulture);
            case "X" or "x":
                var digits = underlying switch { sbyte or byte => 2, short or ushort => 4, int or uint => 8, _ => 16 };
                return ((IFormattable)underlying).ToString("X" + digits, CultureInfo.InvariantCulture);
            case null or "" or "G" or "g" or "F" or "f":
                break;
            default:
                throw new FormatException("Format string can be only \"G\", \"g\", \"X\", \"x\", \"F\", \"f\", \"D\" or \"d\".");
        }

        if (value.Type is null)
        {
            return ((IFormattable)underlying).ToString(null, CultureInfo.InvariantCulture);
        }

        var flags = format is "F" or "f";
        foreach (var attribute in value.Type.GetAttributes())
        {
            flags |= attribute.AttributeClass is { Name: "FlagsAttribute", ContainingNamespace.Name: "System" };
        }

        var names = new List<KeyValuePair<ulong, string>>();
        foreach (var member in value.Type.GetMembers())
        {
            if (member is IFieldSymbol { HasConstantValue: true, ConstantValue: { } constant })
            {
                names.Add(new(unchecked((ulong)Bits(constant)), member.Name));
            }
        }

        // The framework sorts by unsigned value; of equal ones the first declared stays first.
        var sorted = new List<KeyValuePair<ulong, string>>(names.Count);
        foreach (var name in names)
        {
            var at = sorted.Count;
            while (at > 0 && sorted[at - 1].Key > name.Key)
            {
                at--;
            }

            sorted.Insert(at, name);
        }

        var bits = unchecked((ulong)value.Bits);
        foreach (var name in sorted)
        {
            if (name.Key == bits)
            {
                return name.Value;
            }
        }

        if (flags && bits != 0)
        {
            var parts = new List<string>();
            var rest = bits;
            for (var i = sorted.Count - 1; i >= 0; i--)
            {
                if (sorted[i].Key != 0 && (rest & sorted[i].Key) == sorted[i].Key)
                {
                    rest &= ~sorted[i].Key;
                    parts.Insert(0, sorted[i].Value);
                }
            }

            if (rest == 0)
            {
                return string.Join(", ", parts);
            }
        }

        return ((IFormattable)underlying).ToString(null, CultureInfo.InvariantCulture);
    }
}
