using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <summary>A place that holds a value: what assignments and by-reference arguments work on.</summary>
internal abstract class Storage
{
    public abstract object? Get();

    public abstract void Set(object? value);
}

/// <summary>A place of its own.</summary>
internal sealed class Holder(object? value) : Storage
{
    private object? held = value;

    public override object? Get() => held;

    public override void Set(object? value) => held = value;
}

/// <summary>A place known by how to read and how to write it.</summary>
internal sealed class Place(Func<object?> get, Action<object?> set) : Storage
{
    public override object? Get() => get();

    public override void Set(object? value) => set(value);
}

/// <content>Places and assignments.</content>
internal sealed partial class Interpreter
{
    private const string StaticReason = "static members do not change once they have their value";

    /// <summary>The place that an expression names; refuses where it is none that may be changed.</summary>
    private Storage Locate(IOperation target, Frame frame) => TryLocate(target, frame) ?? throw RefusePlace(target, frame);

    private RefusedSignal RefusePlace(IOperation target, Frame frame)
    {
        Refuse(target, frame, $"assigning to this ({target.Kind}) is not evaluated", "make a new object with the value");
        return new RefusedSignal();
    }

    private Storage? TryLocate(IOperation target, Frame frame)
    {
        switch (target)
        {
            case ILocalReferenceOperation local:
                return VariablePlace(local.Local, local, frame);
            case IParameterReferenceOperation parameter:
                return VariablePlace(parameter.Parameter, parameter, frame);
            case IDeclarationExpressionOperation declaration:
                return Locate(declaration.Expression, frame);
            case IDiscardOperation:
                return new Holder(null);
            case IFieldReferenceOperation field:
                return FieldPlace(field, frame);
            case IPropertyReferenceOperation property:
                return PropertyPlace(property, frame);
            case IArrayElementReferenceOperation element:
                return ElementPlace(element, frame);
            case IImplicitIndexerReferenceOperation indexer:
                return ImplicitIndexerPlace(indexer, frame);
            case IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ImplicitReceiver }:
                return frame.Activation.Implicit.Count > 0 ? frame.Activation.Implicit.Peek() as Storage : null;
            case IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ContainingTypeInstance } when frame.Activation.Self is Storage self:
                return self;
            case IConversionOperation { Conversion.IsIdentity: true, IsImplicit: true } conversion:
                return TryLocate(conversion.Operand, frame);
            default:
                return LocateReference(target, frame);
        }
    }

    /// <summary>The place to which an expression refers that gives a reference: a call, an assignment or a choice of references.</summary>
    private Storage? LocateReference(IOperation target, Frame frame)
    {
        switch (target)
        {
            case IInvocationOperation { TargetMethod.RefKind: not RefKind.None } call:
                return Invocation(call, frame) as Storage;
            case IParenthesizedOperation parenthesized:
                return TryLocate(parenthesized.Operand, frame);
            case IConditionalOperation { IsRef: true, WhenFalse: { } otherwise } choice:
                return TryLocate(Condition(choice.Condition, frame) ? choice.WhenTrue : otherwise, frame);
            case ISimpleAssignmentOperation { IsRef: true } assignment:
                return Rebind(assignment, frame);
            default:
                return null;
        }
    }

    /// <summary>A place to be passed on or kept as a reference: that it exists is checked now.</summary>
    private Storage Reference(IOperation target, Frame frame)
    {
        var place = Locate(target, frame);
        place.Get();
        return place;
    }

    /// <summary>Lets a reference refer to another place.</summary>
    private Storage Rebind(ISimpleAssignmentOperation assignment, Frame frame)
    {
        var symbol = assignment.Target switch { ILocalReferenceOperation local => (ISymbol)local.Local, IParameterReferenceOperation parameter => parameter.Parameter, _ => null };
        if (symbol is null || !frame.TryFind(symbol, out var holder, out var index) || !ReferenceEquals(holder.Activation.Run, run))
        {
            Refuse(assignment, frame, "this reference is not evaluated", "use the values");
            throw new RefusedSignal();
        }

        var place = Reference(assignment.Value, frame);
        holder[index] = place;
        return place;
    }

    /// <summary>Whether an expression names a variable. Where it does not, or where it may only be read, C# calls a struct's methods on a copy.</summary>
    private static bool IsVariable(IOperation expression, Frame frame, bool orReadOnly = false)
    {
        switch (expression)
        {
            case ILocalReferenceOperation local:
                return orReadOnly || local.Local.RefKind != RefKind.RefReadOnly;
            case IParameterReferenceOperation parameter:
                return orReadOnly || parameter.Parameter.RefKind is RefKind.None or RefKind.Ref or RefKind.Out;
            case IFieldReferenceOperation { Field: var field } reference:
                return (orReadOnly || !field.IsReadOnly || IsOwnToSet(field, reference.Instance, frame))
                    && (field.IsStatic || reference.Instance is { Type.IsReferenceType: true } || (reference.Instance is { } instance && IsVariable(instance, frame, orReadOnly)));
            case IPropertyReferenceOperation { Property.RefKind: var kind }:
                return kind == RefKind.Ref || (orReadOnly && kind == RefKind.RefReadOnly);
            case IInvocationOperation { TargetMethod.RefKind: var kind }:
                return kind == RefKind.Ref || (orReadOnly && kind == RefKind.RefReadOnly);
            case IArrayElementReferenceOperation:
                return true;
            case IImplicitIndexerReferenceOperation { IndexerSymbol: IPropertySymbol { RefKind: RefKind.Ref } }:
                return true;
            case IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ImplicitReceiver }:
                return true;
            case IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ContainingTypeInstance }:
                return orReadOnly || frame.Activation.Method is not { IsReadOnly: true };
            case IParenthesizedOperation parenthesized:
                return IsVariable(parenthesized.Operand, frame, orReadOnly);
            case IConversionOperation { Conversion.IsIdentity: true, IsImplicit: true } conversion:
                return IsVariable(conversion.Operand, frame, orReadOnly);
            case IConditionalOperation { IsRef: true, WhenFalse: { } otherwise } choice:
                return IsVariable(choice.WhenTrue, frame, orReadOnly) && IsVariable(otherwise, frame, orReadOnly);
            case ISimpleAssignmentOperation { IsRef: true } assignment:
                return IsVariable(assignment.Value, frame, orReadOnly);
            default:
                return false;
        }
    }

    /// <summary>Whether a read-only field may be written here: by a constructor of its type, in the object that is being made, or by an initialiser of its type's statics.</summary>
    private static bool IsOwnToSet(IFieldSymbol field, IOperation? instance, Frame frame) =>
        field.IsStatic ? frame.Activation.Method is null && SymbolEqualityComparer.Default.Equals(frame.Activation.Run.Type, field.ContainingType) : instance is IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ContainingTypeInstance }
        && frame.Activation.Method is { MethodKind: MethodKind.Constructor } or { IsInitOnly: true }
        && SymbolEqualityComparer.Default.Equals(frame.Activation.Method!.ContainingType.OriginalDefinition, field.ContainingType.OriginalDefinition);

    /// <summary>
    /// The object on which a method is called. A struct whose method may change it comes as the place where it stands, or where that is no variable as a copy's
    /// place; any other object as itself.
    /// </summary>
    private object? Receiver(IOperation instance, IMethodSymbol method, Frame frame)
    {
        if (method.IsReadOnly || instance.Type is not { } declared || declared.IsReferenceType || instance is IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.PatternInput }
            || Resolve(declared, frame) is not INamedTypeSymbol { TypeKind: TypeKind.Struct, IsReadOnly: false } type || !types.IsSource(type))
        {
            return Evaluate(instance, frame);
        }

        if (IsVariable(instance, frame) && TryLocate(instance, frame) is { } place)
        {
            return place;
        }

        return Evaluate(instance, frame) switch { UserObject copy => new Holder(copy), var other => other };
    }

    private static object? ValueOf(object? receiver) => receiver is Storage place ? place.Get() : receiver;

    private Storage VariablePlace(ISymbol symbol, IOperation at, Frame frame)
    {
        if (symbol is ILocalSymbol local && !frame.TryFind(symbol, out _, out _))
        {
            frame.Declare(local, Default(Resolve(local.Type, frame)));
        }

        if (frame.TryFind(symbol, out var holder, out var index))
        {
            if (holder[index] is Storage place)
            {
                return place;
            }

            return new Place(
                () => holder[index],
                value =>
                {
                    if (!ReferenceEquals(holder.Activation.Run, run))
                    {
                        Refuse(at, frame, $"this changes '{symbol.Name}', a variable of another static member's evaluation", "keep what changes inside one member");
                        throw new RefusedSignal();
                    }

                    holder[index] = value;
                });
        }

        if (symbol is IParameterSymbol && Self(frame) is UserObject self && self.Layout.TryGet(symbol, out var slot))
        {
            return SlotPlace(frame.Activation.Self is Storage location ? location : new Holder(self), slot, at, frame);
        }

        throw RefusePlace(at, frame);
    }

    /// <summary>A field of an object; of a struct by putting a changed copy where the struct stands.</summary>
    private Storage SlotPlace(Storage owner, int slot, IOperation at, Frame frame) => new Place(
        () => ((UserObject)owner.Get()!).Slots[slot],
        value => SetSlot(owner, slot, value, at, frame));

    private void SetSlot(Storage owner, int slot, object? value, IOperation at, Frame frame)
    {
        switch (owner.Get())
        {
            case UserObject { Type.IsValueType: true } user:
                var copy = user.Copy(run);
                copy.Slots[slot] = value;
                owner.Set(copy);
                break;
            case UserObject user when ReferenceEquals(user.Maker, run):
                user.Slots[slot] = value;
                break;
            case UserObject user:
                RefuseMutation(user, at, frame);
                break;
            case null:
                throw Raise(new NullReferenceException(), at, frame);
            default:
                throw new RefusedSignal();
        }
    }

    private Storage? FieldPlace(IFieldReferenceOperation field, Frame frame)
    {
        if (field.Field.IsStatic)
        {
            // A read-only one is only ever copied.
            return field.Field.IsReadOnly && !IsOwnToSet(field.Field, null, frame) ? new Holder(FieldReference(field, frame)) : new Place(() => FieldReference(field, frame), _ => RefuseStaticWrite(field, frame));
        }

        if (field.Instance is not { } instance)
        {
            return null;
        }

        // Outside its constructor a read-only field is only ever copied.
        if (field.Field.IsReadOnly && instance is not IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ImplicitReceiver } && !IsOwnToSet(field.Field, instance, frame))
        {
            return new Holder(FieldReference(field, frame));
        }

        var owner = Owner(instance, frame);
        return new Place(
            () => ReadField(owner.Get(), field.Field, field, frame),
            value => SetField(owner, field.Field, value, field, frame));
    }

    /// <summary>The object whose member is named: for a struct the place where it stands, else the object itself.</summary>
    private Storage Owner(IOperation instance, Frame frame) =>
        instance.Type is { IsReferenceType: false } type && Resolve(type, frame).IsValueType && IsVariable(instance, frame) && TryLocate(instance, frame) is { } place ? place : new Holder(Evaluate(instance, frame));

    private void SetField(Storage owner, IFieldSymbol field, object? value, IOperation at, Frame frame)
    {
        var self = owner.Get();
        switch (self)
        {
            case UserObject user when user.Layout.TryGet(field, out var slot):
                SetSlot(owner, slot, value, at, frame);
                break;
            case null:
                throw Raise(new NullReferenceException(), at, frame);
            case Unknown:
                throw new RefusedSignal();
            default:
                if (TupleField(self, field) is not { } info || value is Unknown)
                {
                    throw value is Unknown ? new RefusedSignal() : RefusePlace(at, frame);
                }

                var copy = System.Runtime.CompilerServices.RuntimeHelpers.GetObjectValue(self);
                info.SetValue(copy, value);
                owner.Set(copy);
                break;
        }
    }

    private Storage? PropertyPlace(IPropertyReferenceOperation reference, Frame frame)
    {
        if (reference.Property.IsStatic)
        {
            return new Place(() => PropertyReference(reference, frame), _ => RefuseStaticWrite(reference, frame));
        }

        if (reference.Instance is not { } instance)
        {
            return null;
        }

        var property = Resolve(reference.Property, frame);
        if (property.RefKind != RefKind.None)
        {
            return ReferenceOf(property, reference, frame);
        }

        var owner = Owner(instance, frame);
        var arguments = property.GetMethod is { } getter ? Arguments(reference.Arguments, getter, frame) : property.SetMethod is { } setter ? Arguments(reference.Arguments, setter, frame) : [];
        return new Place(
            () => property.GetMethod is { } get ? Call(Override(get, owner.Get()), owner.Get() is UserObject { Type.IsValueType: true } ? owner : owner.Get(), arguments, reference, frame) : Unknown.Value,
            value => SetProperty(owner, property, value, reference, frame, arguments: arguments));
    }

    /// <summary>The place to which a property refers that gives a reference.</summary>
    private Storage? ReferenceOf(IPropertySymbol property, IPropertyReferenceOperation reference, Frame frame)
    {
        if (TypeMap.IsSpan(property.ContainingType))
        {
            return Evaluate(reference.Instance!, frame) is Array array && reference.Arguments.Length == 1 && Evaluate(reference.Arguments[0].Value, frame) is int index
                ? ElementPlace(array, [index], reference, frame)
                : null;
        }

        return PropertyReferenceOrPlace(reference, frame) as Storage;
    }

    private void SetProperty(Storage owner, IPropertySymbol property, object? value, IOperation at, Frame frame, bool initialising = false, object?[]? arguments = null)
    {
        var self = owner.Get();
        if (self is null)
        {
            throw Raise(new NullReferenceException(), at, frame);
        }

        if (self is Unknown || (value is Unknown && self is not UserObject))
        {
            throw new RefusedSignal();
        }

        if (property.RefKind != RefKind.None)
        {
            throw RefusePlace(at, frame);
        }

        if (property.SetMethod is not { } setter)
        {
            // A property with a getter only, set in its type's own constructor.
            if (self is UserObject user && user.Layout.TryGet(property, out var slot))
            {
                SetSlot(owner, slot, value, at, frame);
            }

            return;
        }

        object?[] all = arguments is { Length: > 0 } ? [.. arguments.Take(setter.Parameters.Length - 1), value] : [value];
        if (Call(Override(setter, self), self is UserObject { Type.IsValueType: true } ? owner : self, all, at, frame) is Unknown && !initialising)
        {
            throw new RefusedSignal();
        }
    }

    private object? SimpleAssignment(ISimpleAssignmentOperation assignment, Frame frame)
    {
        if (assignment.IsRef)
        {
            return Rebind(assignment, frame).Get();
        }

        var place = Locate(assignment.Target, frame);
        var value = Evaluate(assignment.Value, frame);
        place.Set(value);
        return value;
    }

    private object? CompoundAssignment(ICompoundAssignmentOperation assignment, Frame frame)
    {
        var place = Locate(assignment.Target, frame);
        var old = place.Get();
        if (assignment.OperatorMethod is { IsStatic: false } own)
        {
            return OperateOn(place, old, own, [Evaluate(assignment.Value, frame)], assignment, frame);
        }

        var right = Evaluate(assignment.Value, frame);
        if (old is Unknown || right is Unknown)
        {
            place.Set(Unknown.Value);
            return Unknown.Value;
        }

        var targetType = assignment.Target.Type is { } declared ? Resolve(declared, frame) : null;
        var leftType = targetType;
        if (assignment.InConversion is { Exists: true, IsIdentity: false } inward && targetType is not null && OperandType(assignment, targetType) is { } wide)
        {
            old = Convert(old, targetType, wide, inward.MethodSymbol, assignment.IsChecked, assignment, frame);
            leftType = wide;
        }

        var value = Operate(assignment.OperatorKind, old, right, OperatorOn(assignment.OperatorMethod, assignment.ConstrainedToType, frame), assignment.IsLifted, assignment.IsChecked, leftType, assignment.Value.Type, leftType, assignment, frame);
        if (assignment.OutConversion is { Exists: true, IsIdentity: false } outward && targetType is not null && leftType is not null && value is not Unknown)
        {
            value = Convert(value, leftType, targetType, outward.MethodSymbol, assignment.IsChecked, assignment, frame);
        }

        place.Set(value);
        return value;
    }

    /// <summary>An operator that changes its operand where it stands.</summary>
    private object? OperateOn(Storage place, object? operand, IMethodSymbol method, object?[] arguments, IOperation at, Frame frame)
    {
        if (operand is Unknown || HasUnknown(arguments))
        {
            throw new RefusedSignal();
        }

        if (operand is null)
        {
            throw Raise(new NullReferenceException(), at, frame);
        }

        method = Resolve(method, frame);
        Call(Override(method, operand), operand is UserObject { Type.IsValueType: true } ? place : operand, arguments, at, frame);
        return place.Get();
    }

    /// <summary>The type in which a compound assignment computes, e.g. int for a byte.</summary>
    private ITypeSymbol? OperandType(ICompoundAssignmentOperation assignment, ITypeSymbol target)
    {
        if (assignment.OperatorMethod is { } method)
        {
            return method.Parameters[0].Type;
        }

        var special = Underlying(target)!.SpecialType;
        if (assignment.OperatorKind is BinaryOperatorKind.LeftShift or BinaryOperatorKind.RightShift or BinaryOperatorKind.UnsignedRightShift)
        {
            return special is SpecialType.System_Byte or SpecialType.System_SByte or SpecialType.System_Int16 or SpecialType.System_UInt16 or SpecialType.System_Char
                ? compilation.GetSpecialType(SpecialType.System_Int32)
                : target;
        }

        return assignment.Value.Type is { SpecialType: not SpecialType.None } right ? right : Underlying(assignment.Value.Type);
    }

    private object? Increment(IIncrementOrDecrementOperation operation, Frame frame)
    {
        var place = Locate(operation.Target, frame);
        var old = place.Get();
        if (old is null or Unknown)
        {
            return old;
        }

        object? value;
        if (operation.OperatorMethod is { IsStatic: false } own)
        {
            return OperateOn(place, old, own, [], operation, frame);
        }

        if (operation.OperatorMethod is { } method)
        {
            value = CallOperator(method, [old], operation, frame);
        }
        else
        {
            value = Incremented(old, operation, frame);
        }

        place.Set(value);
        return operation.IsPostfix ? old : value;
    }

    private object? Incremented(object old, IIncrementOrDecrementOperation operation, Frame frame)
    {
        var kind = operation.Kind == OperationKind.Increment ? BinaryOperatorKind.Add : BinaryOperatorKind.Subtract;
        var plain = Enums.Underlying(old)!;
        var special = Underlying(operation.Target.Type) is INamedTypeSymbol { EnumUnderlyingType: { } underlying } ? underlying.SpecialType : Underlying(operation.Target.Type)!.SpecialType;
        object? value = plain switch
        {
            double number => number + (kind == BinaryOperatorKind.Add ? 1 : -1),
            float number => number + (kind == BinaryOperatorKind.Add ? 1 : -1),
            decimal number => number + (kind == BinaryOperatorKind.Add ? 1 : -1),
            ulong => Plain(kind, plain, 1UL, operation.IsChecked, operation, frame),
            long => Plain(kind, plain, 1L, operation.IsChecked, operation, frame),
            uint => Plain(kind, plain, 1U, operation.IsChecked, operation, frame),
            int => Plain(kind, plain, 1, operation.IsChecked, operation, frame),
            _ => Number(Enums.Bits(plain) + (kind == BinaryOperatorKind.Add ? 1 : -1), compilation.GetSpecialType(special), operation.IsChecked, operation, frame),
        };
        return old is UserEnum or Enum && value is not null and not Unknown ? EnumValue(Underlying(operation.Target.Type)!, value) : value;
    }

    private object? CoalesceAssignment(ICoalesceAssignmentOperation assignment, Frame frame)
    {
        var place = Locate(assignment.Target, frame);
        var old = place.Get();
        if (old is not null)
        {
            if (old is Unknown)
            {
                Skip(assignment.Value);
            }

            return old;
        }

        var value = Evaluate(assignment.Value, frame);
        place.Set(value);
        return value;
    }

    private object? Deconstruction(IDeconstructionAssignmentOperation assignment, Frame frame)
    {
        // Places first, then the value, then the assignments: so that (a, b) = (b, a) swaps.
        var target = assignment.Target is IDeclarationExpressionOperation declaration ? declaration.Expression : assignment.Target;
        if (target is not ITupleOperation tuple)
        {
            return Refuse(assignment, frame, "this deconstruction is not evaluated", "assign the values one by one");
        }

        var places = Places(tuple, frame);
        var value = Evaluate(assignment.Value, frame);
        AssignParts(places, tuple, value, assignment.Value.Type is { } type ? Resolve(type, frame) : null, assignment, frame);
        return value;
    }

    private List<object> Places(ITupleOperation tuple, Frame frame)
    {
        var places = new List<object>(tuple.Elements.Length);
        foreach (var element in tuple.Elements)
        {
            var inner = element is IDeclarationExpressionOperation declaration ? declaration.Expression : element;
            places.Add(inner is ITupleOperation nested ? Places(nested, frame) : Locate(inner, frame));
        }

        return places;
    }

    private void AssignParts(List<object> places, ITupleOperation target, object? value, ITypeSymbol? type, IOperation at, Frame frame)
    {
        var (parts, partTypes) = Parts(value, type, places.Count, at, frame);
        for (var i = 0; i < places.Count; i++)
        {
            if (places[i] is List<object> nested)
            {
                var element = target.Elements[i] is IDeclarationExpressionOperation declaration ? declaration.Expression : target.Elements[i];
                AssignParts(nested, (ITupleOperation)element, parts[i], partTypes[i], at, frame);
                continue;
            }

            var part = parts[i];
            if (target.Elements[i].Type is { } wanted && partTypes[i] is { } given && target.Elements[i] is not IDiscardOperation)
            {
                var to = Resolve(wanted, frame);
                var conversion = compilation.ClassifyCommonConversion(given, to);
                part = conversion.IsIdentity || part is Unknown ? part : Convert(part, given, to, conversion.MethodSymbol, false, at, frame);
            }

            ((Storage)places[i]).Set(part);
        }
    }

    /// <summary>The parts into which a value comes apart: a tuple's values, or what Deconstruct gives.</summary>
    private (object?[] Parts, ITypeSymbol?[] Types) Parts(object? value, ITypeSymbol? type, int count, IOperation at, Frame frame)
    {
        if (value is Unknown)
        {
            var unknown = new object?[count];
            for (var i = 0; i < count; i++)
            {
                unknown[i] = Unknown.Value;
            }

            return (unknown, new ITypeSymbol?[count]);
        }

        if (value is not null && IsTuple(value))
        {
            return (TupleParts(value), type is INamedTypeSymbol { IsTupleType: true } tuple ? [.. tuple.TupleElements.Select(element => element.Type)] : new ITypeSymbol?[count]);
        }

        if (value is null)
        {
            throw Raise(new NullReferenceException(), at, frame);
        }

        if (FindDeconstruct(type, count) is not { } method)
        {
            Refuse(at, frame, "this deconstruction is not evaluated", "read the properties one by one");
            throw new RefusedSignal();
        }

        var holders = new object?[count];
        for (var i = 0; i < count; i++)
        {
            holders[i] = new Holder(null);
        }

        if (method.IsStatic)
        {
            Call(method, null, [value, .. holders], at, frame);
        }
        else
        {
            Call(Override(method, value), value, holders, at, frame);
        }

        var results = new object?[count];
        var partTypes = new ITypeSymbol?[count];
        for (var i = 0; i < count; i++)
        {
            results[i] = ((Holder)holders[i]!).Get();
            partTypes[i] = method.Parameters[method.IsStatic ? i + 1 : i].Type;
        }

        return (results, partTypes);
    }

    private static IMethodSymbol? FindDeconstruct(ITypeSymbol? type, int count)
    {
        for (var at = type; at is not null; at = at.BaseType)
        {
            foreach (var member in at.GetMembers("Deconstruct"))
            {
                if (member is IMethodSymbol { IsStatic: false } method && method.Parameters.Length == count)
                {
                    return method;
                }
            }
        }

        return null;
    }
}
