using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <summary>C#'s built-in operators and numeric conversions on boxed values. Both operands have the same type, as the compiler's conversions give them.</summary>
internal static class Arithmetic
{
    /// <summary>The operator's value; null where it has none for these operands.</summary>
    public static object? Binary(BinaryOperatorKind kind, object left, object right, bool isChecked)
    {
        switch (left)
        {
            case int a when right is int b:
                return isChecked ? CheckedInt(kind, a, b) : Int(kind, a, b);
            case double a when right is double b:
                return Double(kind, a, b);
            case long a when right is long b:
                return isChecked ? CheckedLong(kind, a, b) : Long(kind, a, b);
            case bool a when right is bool b:
                return Bool(kind, a, b);
            case decimal a when right is decimal b:
                return Decimal(kind, a, b);
            case float a when right is float b:
                return Float(kind, a, b);
            case uint a when right is uint b:
                return isChecked ? CheckedUInt(kind, a, b) : UInt(kind, a, b);
            case ulong a when right is ulong b:
                return isChecked ? CheckedULong(kind, a, b) : ULong(kind, a, b);
            case uint a when right is int b:
                return kind switch { BinaryOperatorKind.LeftShift => a << b, BinaryOperatorKind.RightShift or BinaryOperatorKind.UnsignedRightShift => a >> b, _ => null };
            case long a when right is int b:
                return kind switch { BinaryOperatorKind.LeftShift => a << b, BinaryOperatorKind.RightShift => a >> b, BinaryOperatorKind.UnsignedRightShift => a >>> b, _ => null };
            case ulong a when right is int b:
                return kind switch { BinaryOperatorKind.LeftShift => a << b, BinaryOperatorKind.RightShift or BinaryOperatorKind.UnsignedRightShift => a >> b, _ => null };
            case string a when right is string b && kind is BinaryOperatorKind.Equals or BinaryOperatorKind.NotEquals:
                return string.Equals(a, (string)right, StringComparison.Ordinal) == (kind == BinaryOperatorKind.Equals);
            default:
                return Small(kind, left, right);
        }
    }

    // Equality of small integers and characters stands in the tree without promotion in patterns and tuples.
    private static object? Small(BinaryOperatorKind kind, object left, object right) =>
        left is sbyte or byte or short or ushort or char && right is sbyte or byte or short or ushort or char
            ? Int(kind, (int)Enums.Bits(left), (int)Enums.Bits(right))
            : null;

    private static object? Int(BinaryOperatorKind kind, int a, int b) => unchecked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => b == -1 ? (a == int.MinValue ? throw new OverflowException() : 0) : a % b,
        BinaryOperatorKind.LeftShift => a << b,
        BinaryOperatorKind.RightShift => a >> b,
        BinaryOperatorKind.UnsignedRightShift => a >>> b,
        BinaryOperatorKind.And => a & b,
        BinaryOperatorKind.Or => a | b,
        BinaryOperatorKind.ExclusiveOr => a ^ b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    });

    private static object? CheckedInt(BinaryOperatorKind kind, int a, int b) => checked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        _ => Int(kind, a, b),
    });

    private static object? UInt(BinaryOperatorKind kind, uint a, uint b) => unchecked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => a % b,
        BinaryOperatorKind.And => a & b,
        BinaryOperatorKind.Or => a | b,
        BinaryOperatorKind.ExclusiveOr => a ^ b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    });

    private static object? CheckedUInt(BinaryOperatorKind kind, uint a, uint b) => checked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        _ => UInt(kind, a, b),
    });

    private static object? Long(BinaryOperatorKind kind, long a, long b) => unchecked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => b == -1 ? (a == long.MinValue ? throw new OverflowException() : 0L) : a % b,
        BinaryOperatorKind.And => a & b,
        BinaryOperatorKind.Or => a | b,
        BinaryOperatorKind.ExclusiveOr => a ^ b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    });

    private static object? CheckedLong(BinaryOperatorKind kind, long a, long b) => checked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        _ => Long(kind, a, b),
    });

    private static object? ULong(BinaryOperatorKind kind, ulong a, ulong b) => unchecked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => a % b,
        BinaryOperatorKind.And => a & b,
        BinaryOperatorKind.Or => a | b,
        BinaryOperatorKind.ExclusiveOr => a ^ b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    });

    private static object? CheckedULong(BinaryOperatorKind kind, ulong a, ulong b) => checked(kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        _ => ULong(kind, a, b),
    });

    private static object? Double(BinaryOperatorKind kind, double a, double b) => kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => a % b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    };

    private static object? Float(BinaryOperatorKind kind, float a, float b) => kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => a % b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    };

    private static object? Decimal(BinaryOperatorKind kind, decimal a, decimal b) => kind switch
    {
        BinaryOperatorKind.Add => a + b,
        BinaryOperatorKind.Subtract => a - b,
        BinaryOperatorKind.Multiply => a * b,
        BinaryOperatorKind.Divide => a / b,
        BinaryOperatorKind.Remainder => a % b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        BinaryOperatorKind.LessThan => a < b,
        BinaryOperatorKind.LessThanOrEqual => a <= b,
        BinaryOperatorKind.GreaterThan => a > b,
        BinaryOperatorKind.GreaterThanOrEqual => a >= b,
        _ => (object?)null,
    };

    private static object? Bool(BinaryOperatorKind kind, bool a, bool b) => kind switch
    {
        BinaryOperatorKind.And => a & b,
        BinaryOperatorKind.Or => a | b,
        BinaryOperatorKind.ExclusiveOr => a ^ b,
        BinaryOperatorKind.Equals => a == b,
        BinaryOperatorKind.NotEquals => a != b,
        _ => (object?)null,
    };

    /// <summary>The value of a built-in unary operator; null where it has none for the operand.</summary>
    public static object? Unary(UnaryOperatorKind kind, object operand, bool isChecked)
    {
        switch (kind)
        {
            case UnaryOperatorKind.Plus:
                return operand;
            case UnaryOperatorKind.Not or UnaryOperatorKind.BitwiseNegation when operand is bool truth:
                return !truth;
            case UnaryOperatorKind.BitwiseNegation:
                return operand switch { int a => ~a, uint a => ~a, long a => ~a, ulong a => ~a, _ => (object?)null };
            case UnaryOperatorKind.Minus:
                return operand switch
                {
                    int a => isChecked ? checked(-a) : unchecked(-a),
                    long a => isChecked ? checked(-a) : unchecked(-a),
                    double a => -a,
                    float a => -a,
                    decimal a => -a,
                    _ => (object?)null,
                };
            default:
                return null;
        }
    }

    /// <summary>Whether a conversion to an integer is one that C# defines without checking too: the number cut towards zero is one of its values.</summary>
    public static bool IsInRange(object value, SpecialType to)
    {
        var number = value is float single ? single : value is double wide ? wide : 0;
        number = number < 0 ? Math.Ceiling(number) : Math.Floor(number);
        return to switch
        {
            SpecialType.System_SByte => number is >= sbyte.MinValue and <= sbyte.MaxValue,
            SpecialType.System_Byte => number is >= byte.MinValue and <= byte.MaxValue,
            SpecialType.System_Int16 => number is >= short.MinValue and <= short.MaxValue,
            SpecialType.System_UInt16 or SpecialType.System_Char => number is >= ushort.MinValue and <= ushort.MaxValue,
            SpecialType.System_Int32 => number is >= int.MinValue and <= int.MaxValue,
            SpecialType.System_UInt32 => number is >= uint.MinValue and <= uint.MaxValue,
            SpecialType.System_Int64 => number is >= -9223372036854775808.0 and < 9223372036854775808.0,
            SpecialType.System_UInt64 => number is >= 0 and < 18446744073709551616.0,
            _ => true,
        };
    }

    /// <summary>The number converted to another numeric type, as C#'s explicit conversions do.</summary>
    public static object Convert(object value, SpecialType to, bool isChecked)
    {
        if (value is IntPtr or UIntPtr || to is SpecialType.System_IntPtr or SpecialType.System_UIntPtr)
        {
            throw new NotSupportedException();
        }

        return value switch
        {
            double number => FromDouble(number, to, isChecked),
            float number => FromFloat(number, to, isChecked),
            decimal number => FromDecimal(number, to),
            ulong number => FromULong(number, to, isChecked),
            _ => FromLong(Enums.Bits(value), to, isChecked),
        };
    }

    private static object FromLong(long v, SpecialType to, bool isChecked) => to switch
    {
        SpecialType.System_Int32 => isChecked ? checked((int)v) : unchecked((int)v),
        SpecialType.System_Double => (double)v,
        SpecialType.System_Int64 => v,
        SpecialType.System_Decimal => (decimal)v,
        SpecialType.System_Single => (float)v,
        SpecialType.System_SByte => isChecked ? checked((sbyte)v) : unchecked((sbyte)v),
        SpecialType.System_Byte => isChecked ? checked((byte)v) : unchecked((byte)v),
        SpecialType.System_Int16 => isChecked ? checked((short)v) : unchecked((short)v),
        SpecialType.System_UInt16 => isChecked ? checked((ushort)v) : unchecked((ushort)v),
        SpecialType.System_UInt32 => isChecked ? checked((uint)v) : unchecked((uint)v),
        SpecialType.System_UInt64 => isChecked ? checked((ulong)v) : unchecked((ulong)v),
        SpecialType.System_Char => isChecked ? checked((char)v) : unchecked((char)v),
        _ => throw new NotSupportedException(),
    };

    private static object FromULong(ulong v, SpecialType to, bool isChecked) => to switch
    {
        SpecialType.System_UInt64 => v,
        SpecialType.System_Double => (double)v,
        SpecialType.System_Single => (float)v,
        SpecialType.System_Decimal => (decimal)v,
        SpecialType.System_Int64 => isChecked ? checked((long)v) : unchecked((long)v),
        _ => isChecked ? FromLong(checked((long)v), to, true) : FromLong(unchecked((long)v), to, false),
    };

    // Without checking, out of range is unspecified in C# and refused beforehand.
    private static object FromDouble(double v, SpecialType to, bool isChecked) => to switch
    {
        SpecialType.System_Double => v,
        SpecialType.System_Single => (float)v,
        SpecialType.System_Decimal => (decimal)v,
        SpecialType.System_Int32 => isChecked ? checked((int)v) : unchecked((int)v),
        SpecialType.System_Int64 => isChecked ? checked((long)v) : unchecked((long)v),
        SpecialType.System_SByte => isChecked ? checked((sbyte)v) : unchecked((sbyte)v),
        SpecialType.System_Byte => isChecked ? checked((byte)v) : unchecked((byte)v),
        SpecialType.System_Int16 => isChecked ? checked((short)v) : unchecked((short)v),
        SpecialType.System_UInt16 => isChecked ? checked((ushort)v) : unchecked((ushort)v),
        SpecialType.System_UInt32 => isChecked ? checked((uint)v) : unchecked((uint)v),
        SpecialType.System_UInt64 => isChecked ? checked((ulong)v) : unchecked((ulong)v),
        SpecialType.System_Char => isChecked ? checked((char)v) : unchecked((char)v),
        _ => throw new NotSupportedException(),
    };

    private static object FromFloat(float v, SpecialType to, bool isChecked) => to switch
    {
        SpecialType.System_Single => v,
        SpecialType.System_Decimal => (decimal)v,
        _ => FromDouble(v, to, isChecked),
    };

    private static object FromDecimal(decimal v, SpecialType to) => to switch
    {
        SpecialType.System_Decimal => v,
        SpecialType.System_Double => (double)v,
        SpecialType.System_Single => (float)v,
        SpecialType.System_Int32 => (int)v,
        SpecialType.System_Int64 => (long)v,
        SpecialType.System_SByte => (sbyte)v,
        SpecialType.System_Byte => (byte)v,
        SpecialType.System_Int16 => (short)v,
        SpecialType.System_UInt16 => (ushort)v,
        SpecialType.System_UInt32 => (uint)v,
        SpecialType.System_UInt64 => (ulong)v,
        SpecialType.System_Char => (char)v,
        _ => throw new NotSupportedException(),
    };

    /// <summary>C#'s <c>==</c> on plain values, numbers promoted.</summary>
    public static bool PlainEquals(object? left, object? right)
    {
        left = Enums.Underlying(left);
        right = Enums.Underlying(right);
        if (left is null || right is null || left is string || right is string || left is bool || right is bool)
        {
            return Equals(left, right);
        }

        if (left is decimal || right is decimal)
        {
            return System.Convert.ToDecimal(left, CultureInfo.InvariantCulture) == System.Convert.ToDecimal(right, CultureInfo.InvariantCulture);
        }

        if (left is double || right is double)
        {
            return ToDouble(left) == ToDouble(right);
        }

        if (left is float || right is float)
        {
            return (float)Convert(left, SpecialType.System_Single, false) == (float)Convert(right, SpecialType.System_Single, false);
        }

        return left is ulong || right is ulong ? left is ulong == right is ulong ? left.Equals(right) : Enums.Bits(left) == Enums.Bits(right) && Enums.Bits(left) >= 0 : Enums.Bits(left) == Enums.Bits(right);
    }

    private static double ToDouble(object value) => value is char letter ? letter : System.Convert.ToDouble(value, CultureInfo.InvariantCulture);
}
