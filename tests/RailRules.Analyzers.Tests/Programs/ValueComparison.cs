using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;
using UnitsNet;

namespace RailRules.Analyzers.Tests.Programs;

/// <summary>
/// Compares a value of the running program with the interpreter's, in depth: types, every bit of every number, the text, the order, the members private ones
/// included, and which references are one and the same object.
/// </summary>
internal sealed class ValueComparison(EvaluationSession session)
{
    private const BindingFlags Declared = BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private readonly Dictionary<object, object> interpretedOf = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<object, object> realOf = new(ReferenceEqualityComparer.Instance);
    private readonly List<string> differences = [];

    public IReadOnlyList<string> Differences => differences;

    public void Compare(string path, object? real, object? interpreted)
    {
        if (real is null || interpreted is null)
        {
            Check(path, real is null && interpreted is null, real, interpreted);
            return;
        }

        if (Seen(path, real, interpreted))
            return;
        if (interpreted is UserObject user)
        {
            CompareUserObject(path, real, user);
            return;
        }

        if (real is Delegate)
        {
            Check(path, interpreted is Delegate, real, interpreted);
            return;
        }

        // Types of the compiler's and the library's own making, behind an interface, need not be the same.
        if (IsVisible(real.GetType()) && Mapped(real.GetType()) != interpreted.GetType())
        {
            differences.Add($"{path}: a {real.GetType()} in the program, a {interpreted.GetType()} in the interpreter");
            return;
        }

        switch (interpreted)
        {
            case UserEnum one:
                Check(path, real is Enum && Enums.Bits(Enums.Underlying(real)!) == one.Bits && NameOf(one.Type!) == real.GetType().FullName && real.ToString() == one.ToString(), real, interpreted);
                break;
            case IndexValue or RangeValue:
                Check(path, real.ToString() == interpreted.ToString(), real, interpreted);
                break;
            case IQuantity quantity:
                Check(path, ((IQuantity)real).Unit.Equals(quantity.Unit) && SameBits(ValueOf(real), ValueOf(quantity)), real, interpreted);
                break;
            case string or IConvertible or TimeSpan or DateOnly or IntPtr or UIntPtr:
                Check(path, SameBits(real, interpreted), real, interpreted);
                break;
            case IEnumerable items:
                CompareSequences(path, (IEnumerable)real, items);
                break;
            default:
                CompareMembers(path, real, interpreted);
                break;
        }
    }

    /// <summary>Whether the pair was compared before. Two references that are one object in the program must be one in the interpreter, and the other way round.</summary>
    private bool Seen(string path, object real, object interpreted)
    {
        // Equal texts and empty collections may be shared, and values are boxed anew.
        if (real is string or Delegate or ICollection { Count: 0 } || real.GetType().IsValueType)
            return false;
        if (interpretedOf.TryGetValue(real, out var before) | realOf.TryGetValue(interpreted, out var realBefore))
        {
            if (!ReferenceEquals(before, interpreted) || !ReferenceEquals(realBefore, real))
                differences.Add($"{path}: {(before is null ? "another object in the program, one met before in the interpreter" : "an object met before in the program, another one in the interpreter")}");
            return true;
        }

        interpretedOf[real] = interpreted;
        realOf[interpreted] = real;
        return false;
    }

    private void CompareUserObject(string path, object real, UserObject interpreted)
    {
        if (interpreted.Type.IsAnonymousType ? !real.GetType().Name.Contains("AnonymousType", StringComparison.Ordinal) : Definition(real.GetType()).FullName != NameOf(interpreted.Type))
        {
            differences.Add($"{path}: a {real.GetType()} in the program, a {interpreted.Type} in the interpreter");
            return;
        }

        if (interpreted.Type is { IsGenericType: true, IsAnonymousType: false })
        {
            var arguments = real.GetType().GetGenericArguments();
            var symbols = TypeMap.AllTypeArguments(interpreted.Type);
            for (var i = 0; i < arguments.Length; i++)
                Check($"{path} type argument {i}", Definition(arguments[i]).Name == (symbols[i] is IArrayTypeSymbol ? arguments[i].Name : symbols[i].MetadataName), arguments[i], symbols[i]);
        }

        for (var i = 0; i < interpreted.Layout.Count; i++)
        {
            var symbol = interpreted.Layout.Fields[i];
            var names = symbol switch
            {
                IParameterSymbol => [$"<{symbol.Name}>P"],
                IPropertySymbol => new[] { $"<{symbol.Name}>k__BackingField", $"<{symbol.Name}>i__Field" },
                _ => [symbol.Name],
            };

            // A primary constructor's parameter that nothing captures has no field.
            if (FieldOf(real.GetType(), symbol.ContainingType?.MetadataName, names) is { } field)
                Compare($"{path}.{symbol.Name}", field.GetValue(real), interpreted.Slots[i]);
            else if (symbol is not IParameterSymbol)
                differences.Add($"{path}.{symbol.Name}: no such field in the program");
        }
    }

    private static FieldInfo? FieldOf(Type? type, string? declaringType, string[] names)
    {
        for (; type is not null; type = type.BaseType)
        {
            foreach (var name in names)
            {
                if (type.GetField(name, Declared) is { } field && (declaringType is null or "" || type.Name == declaringType || type.Name.Contains("AnonymousType", StringComparison.Ordinal)))
                    return field;
            }
        }

        return null;
    }

    private void CompareSequences(string path, IEnumerable real, IEnumerable interpreted)
    {
        if (IsDefaultArray(real) || IsDefaultArray(interpreted))
        {
            Check(path, IsDefaultArray(real) && IsDefaultArray(interpreted), IsDefaultArray(real) ? "default" : "an array", IsDefaultArray(interpreted) ? "default" : "an array");
            return;
        }

        if (real is Array { Rank: > 1 } table)
        {
            for (var dimension = 0; dimension < table.Rank; dimension++)
                Check($"{path} dimension {dimension}", table.GetLength(dimension) == ((Array)interpreted).GetLength(dimension), table.GetLength(dimension), ((Array)interpreted).GetLength(dimension));
        }

        var left = real.Cast<object?>().ToList();
        var right = session.OnDeepStack(() => interpreted.Cast<object?>().ToList());
        if (left.Count != right.Count)
        {
            differences.Add($"{path}: {left.Count} elements in the program, {right.Count} in the interpreter");
            return;
        }

        for (var i = 0; i < left.Count; i++)
            Compare($"{path}[{i}]", left[i], right[i]);
        if (real.GetType().GetInterfaces().Any(type => type.Name == "IGrouping`2"))
            Compare(path + ".Key", Property(real, "Key"), Property(interpreted, "Key"));
    }

    private void CompareMembers(string path, object real, object interpreted)
    {
        for (Type? one = real.GetType(), other = interpreted.GetType(); one is not null && other is not null; one = one.BaseType, other = other.BaseType)
        {
            foreach (var field in one.GetFields(Declared))
            {
                if (other.GetField(field.Name, Declared) is { } counterpart)
                    Compare($"{path}.{field.Name}", field.GetValue(real), counterpart.GetValue(interpreted));
                else
                    differences.Add($"{path}.{field.Name}: no such field in the interpreter's {other}");
            }
        }
    }

    /// <summary>The type that the interpreter holds in place of the program's.</summary>
    private static Type Mapped(Type type)
    {
        if (type == typeof(Index))
            return typeof(IndexValue);
        if (type == typeof(Range))
            return typeof(RangeValue);
        if (type.IsArray)
            return type.GetArrayRank() == 1 ? Mapped(type.GetElementType()!).MakeArrayType() : Mapped(type.GetElementType()!).MakeArrayType(type.GetArrayRank());
        if (IsProgram(type))
            return type.IsEnum ? typeof(UserEnum) : typeof(UserObject);
        if (!type.IsGenericType)
            return type;
        var arguments = type.GetGenericArguments().Select(Mapped).ToArray();
        return type.GetGenericTypeDefinition() == typeof(Nullable<>) && !arguments[0].IsValueType ? arguments[0] : type.GetGenericTypeDefinition().MakeGenericType(arguments);
    }

    private static bool IsProgram(Type type) => !type.IsArray && (type.Namespace?.StartsWith("Programs.", StringComparison.Ordinal) == true || type.Namespace?.StartsWith("Random", StringComparison.Ordinal) == true || type.Name.StartsWith('<'));

    private static bool IsVisible(Type type) => type.IsArray ? IsVisible(type.GetElementType()!) : Definition(type).IsVisible && type.GetGenericArguments().All(argument => IsProgram(argument) || IsVisible(argument));

    private static Type Definition(Type type) => type.IsGenericType ? type.GetGenericTypeDefinition() : type;

    private static string NameOf(INamedTypeSymbol type) => TypeMap.MetadataName(type);

    private static object ValueOf(object quantity) => Property(quantity, "Value")!;

    private static object? Property(object owner, string name) => owner.GetType().GetProperty(name)!.GetValue(owner);

    private static bool IsDefaultArray(object value) => value.GetType() is { IsValueType: true, Name: "ImmutableArray`1" } && Property(value, "IsDefault") is true;

    private static bool SameBits(object real, object interpreted) => (real, interpreted) switch
    {
        (double a, double b) => BitConverter.DoubleToInt64Bits(a) == BitConverter.DoubleToInt64Bits(b) || (double.IsNaN(a) && double.IsNaN(b)),
        (float a, float b) => BitConverter.SingleToInt32Bits(a) == BitConverter.SingleToInt32Bits(b) || (float.IsNaN(a) && float.IsNaN(b)),
        (decimal a, decimal b) => decimal.GetBits(a).SequenceEqual(decimal.GetBits(b)),
        _ => real.GetType() == interpreted.GetType() && real.Equals(interpreted),
    };

    private void Check(string path, bool same, object? real, object? interpreted)
    {
        if (!same)
            differences.Add($"{path}: {Show(real)} in the program, {Show(interpreted)} in the interpreter");
    }

    private static string Show(object? value) => value switch
    {
        null => "null",
        IQuantity quantity => $"{ValueOf(quantity):R} {quantity.Unit}",
        double or float => FormattableString.Invariant($"{value:R} ({value.GetType().Name})"),
        _ => $"{value} ({value.GetType().Name})",
    };
}
