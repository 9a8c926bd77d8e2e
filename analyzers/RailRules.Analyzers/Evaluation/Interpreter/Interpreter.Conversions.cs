using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Conversions.</content>
internal sealed partial class Interpreter
{
    private object? Conversion(IConversionOperation operation, Frame frame)
    {
        var conversion = operation.Conversion;
        if (!conversion.Exists && operation.Operand.Type is not null)
        {
            return Silent(); // the compiler reports it
        }

        var value = Evaluate(operation.Operand, frame);
        if (value is Unknown || operation.Type is null || operation.Operand.Type is not { } from)
        {
            return value;
        }

        if (conversion.IsIdentity && conversion.MethodSymbol is null)
        {
            return value;
        }

        var to = Resolve(operation.Type, frame);
        if (operation.IsTryCast)
        {
            return IsInstance(value, to, operation, frame) switch { true => value, false => null, var other => other };
        }

        return Convert(value, Resolve(from, frame), to, conversion.MethodSymbol, operation.IsChecked, operation, frame);
    }

    /// <summary>A value converted from one type to another, as C#'s implicit and explicit conversions do.</summary>
    private object? Convert(object? value, ITypeSymbol from, ITypeSymbol to, IMethodSymbol? method, bool isChecked, IOperation at, Frame frame)
    {
        if (value is Unknown)
        {
            return value;
        }

        if (method is not null)
        {
            return UserConversion(value, from, to, method, isChecked, at, frame);
        }

        var target = Underlying(to)!;
        var source = Underlying(from)!;
        if (value is null)
        {
            return ConvertNull(from, to, at, frame);
        }

        if (IsNumeric(target) && IsNumeric(source))
        {
            return Number(value, target, isChecked, at, frame);
        }

        if (SymbolEqualityComparer.Default.Equals(source, target))
        {
            return value;
        }

        if (target is INamedTypeSymbol { IsTupleType: true } tuple && source is INamedTypeSymbol { IsTupleType: true } given)
        {
            return ConvertTuple(value, given, tuple, isChecked, at, frame);
        }

        if (TypeMap.IsSpan(target))
        {
            return value is Array or string ? value is string text ? text.ToCharArray() : value : Refuse(at, frame, "spans are not evaluated here", "use an array");
        }

        if (to.TypeKind == TypeKind.Dynamic)
        {
            return Refuse(at, frame, "dynamic code is not evaluated", "use the static type");
        }

        if (target is INamedTypeSymbol { Name: "FormattableString" or "IFormattable" } && at is IConversionOperation { Operand: IInterpolatedStringOperation })
        {
            return Refuse(at, frame, "a formattable string is not evaluated", "use a plain interpolated string");
        }

        if (value is Array && source is IArrayTypeSymbol { ElementType: var given1 } && ElementOf(target) is { } wanted1 && (types.IsSource(given1) || types.IsSource(wanted1)) && !SymbolEqualityComparer.Default.Equals(given1, wanted1))
        {
            // Elements of source types are alike here: what may be stored would not be checked.
            Provenance.Freeze(value);
        }

        if (at is IConversionOperation { IsImplicit: true } || target.SpecialType == SpecialType.System_Object)
        {
            return value; // boxing or to a base type: nothing happens to the value
        }

        return Cast(value, target, at, frame);
    }

    private object? ConvertNull(ITypeSymbol from, ITypeSymbol to, IOperation at, Frame frame)
    {
        if (!to.IsValueType || to.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T)
        {
            return null;
        }

        throw from.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T
            ? Raise(NoValue(), at, frame)
            : Raise(new NullReferenceException(), at, frame);
    }

    private static InvalidOperationException NoValue() => new("Nullable object must have a value.");

    private object? Cast(object value, ITypeSymbol target, IOperation at, Frame frame)
    {
        // A delegate of the source stands as a library delegate of the same shape.
        if (value is Delegate && target.TypeKind == TypeKind.Delegate)
        {
            return value;
        }

        switch (IsInstance(value, target, at, frame))
        {
            case true:
                return value;
            case false:
                throw Raise(BadCast(value, target), at, frame);
            default:
                return Unknown.Value;
        }
    }

    private InvalidCastException BadCast(object value, ITypeSymbol target)
    {
        var from = value switch { UserObject user => TypeMap.MetadataName(user.Type), UserEnum { Type: { } type } => TypeMap.MetadataName(type), _ => value.GetType().ToString() };
        var to = types.Find(target) is { } real && !types.IsSource(target) && !MentionsSource(target) ? real.ToString() : target is INamedTypeSymbol named ? TypeMap.MetadataName(named) : target.ToDisplayString();
        return new InvalidCastException($"Unable to cast object of type '{from}' to type '{to}'.");
    }

    private object? Number(object value, ITypeSymbol target, bool isChecked, IOperation at, Frame frame)
    {
        var special = target is INamedTypeSymbol { TypeKind: TypeKind.Enum, EnumUnderlyingType: { } underlying } ? underlying.SpecialType : target.SpecialType;
        if (special is SpecialType.System_IntPtr or SpecialType.System_UIntPtr || value is IntPtr or UIntPtr)
        {
            return Refuse(at, frame, "native integers are not evaluated", "use int or long");
        }

        if (!isChecked && value is double or float && !Arithmetic.IsInRange(value, special))
        {
            return Refuse(at, frame, $"this number lies outside '{target.Name}', where C# leaves the result of the conversion open", "use checked, or see to the range beforehand");
        }

        Exception raised;
        try
        {
            var number = Arithmetic.Convert(Enums.Underlying(value)!, special, isChecked);
            return target.TypeKind == TypeKind.Enum ? EnumValue(target, number) : number;
        }
        catch (OverflowException exception)
        {
            raised = exception;
        }

        throw Raise(raised, at, frame);
    }

    private static bool IsNumeric(ITypeSymbol type) =>
        type.TypeKind == TypeKind.Enum || type.SpecialType is >= SpecialType.System_Char and <= SpecialType.System_Double or SpecialType.System_IntPtr or SpecialType.System_UIntPtr;

    private object? ConvertTuple(object value, INamedTypeSymbol from, INamedTypeSymbol to, bool isChecked, IOperation at, Frame frame)
    {
        var parts = TupleParts(value);
        for (var i = 0; i < parts.Length && i < to.TupleElements.Length; i++)
        {
            var conversion = compilation.ClassifyCommonConversion(from.TupleElements[i].Type, to.TupleElements[i].Type);
            parts[i] = conversion.IsIdentity ? parts[i] : Convert(parts[i], from.TupleElements[i].Type, to.TupleElements[i].Type, conversion.MethodSymbol, isChecked, at, frame);
        }

        return MakeTuple(parts, to, at, frame);
    }

    private object? UserConversion(object? value, ITypeSymbol from, ITypeSymbol to, IMethodSymbol method, bool isChecked, IOperation at, Frame frame)
    {
        method = Resolve(method, frame);
        if (types.Find(method.ContainingType) == typeof(IndexValue) && value is int offset)
        {
            return offset >= 0 ? new IndexValue(offset, false) : throw Raise(new ArgumentOutOfRangeException("value", "Non-negative number required."), at, frame);
        }

        var parameter = method.Parameters[0].Type;

        // Lifted: null stays null where the method itself takes no null.
        if (value is null && from.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T && parameter.IsValueType && parameter.OriginalDefinition.SpecialType != SpecialType.System_Nullable_T)
        {
            return ConvertNull(from, to, at, frame);
        }

        var argument = SymbolEqualityComparer.Default.Equals(from, parameter) ? value : Convert(value, from, parameter, null, isChecked, at, frame);
        var result = CallOperator(method, [argument], at, frame);
        return result is Unknown || SymbolEqualityComparer.Default.Equals(method.ReturnType, to) ? result : Convert(result, method.ReturnType, to, null, isChecked, at, frame);
    }
}
