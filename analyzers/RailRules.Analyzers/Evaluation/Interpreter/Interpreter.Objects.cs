using System.Collections.Immutable;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Objects: creation, initialisers, copies, fields and properties; and where each datum was written.</content>
internal sealed partial class Interpreter
{
    private readonly Dictionary<Type, MethodInfo?> clones = [];

    private object? ObjectCreation(IObjectCreationOperation operation, Frame frame)
    {
        if (operation.Type is null || operation.Constructor is null)
        {
            return operation.Type is { IsValueType: true, TypeKind: not TypeKind.TypeParameter } ? Initialised(Default(TypeOf(operation, frame)), operation.Initializer, frame) : Unknown.Value;
        }

        var constructor = Resolve(operation.Constructor, frame);
        var type = (INamedTypeSymbol)TypeOf(operation, frame)!;
        var arguments = Arguments(operation.Arguments, constructor, frame);
        if (types.IsSource(type))
        {
            return type.TypeKind == TypeKind.Delegate ? arguments[0] : Initialised(Construct(type, constructor, arguments, operation, frame), operation.Initializer, frame);
        }

        if (type.IsValueType && constructor.Parameters.IsEmpty)
        {
            return Initialised(Default(type), operation.Initializer, frame);
        }

        var made = type.IsTupleType ? MakeTuple(arguments, type, operation, frame) : CallLibrary(constructor, null, arguments, operation, frame);
        if (made is null or Unknown)
        {
            // What stands in the initialiser is looked at all the same, so that its problems are told at once.
            return made;
        }

        if (Provenance.Find(made) is { } record)
        {
            NoteArguments(record, operation.Arguments, frame);
        }

        return Initialised(made, operation.Initializer, frame);
    }

    private void NoteArguments(ObjectRecord record, ImmutableArray<IArgumentOperation> arguments, Frame frame)
    {
        foreach (var argument in arguments)
        {
            if (argument.ArgumentKind != ArgumentKind.DefaultValue && argument.Parameter is { Name.Length: > 0 } parameter)
            {
                record.Set(char.ToUpperInvariant(parameter.Name[0]) + parameter.Name.Substring(1), OriginAt(argument.Value, frame));
            }
        }
    }

    private Origin OriginAt(IOperation operation, Frame frame) => new(operation.Syntax, frame.Activation.Site, run.Member);

    private object? Initialised(object? made, IObjectOrCollectionInitializerOperation? initializer, Frame frame)
    {
        if (initializer is null || made is null or Unknown)
        {
            return made;
        }

        var holder = new Holder(made);
        Initialise(holder, initializer, frame);
        return holder.Get();
    }

    private void Initialise(Storage made, IObjectOrCollectionInitializerOperation initializer, Frame frame)
    {
        var implicits = frame.Activation.Implicit;
        foreach (var part in initializer.Initializers)
        {
            implicits.Push(made.Get() is ValueType or UserObject { Type.IsValueType: true } ? made : made.Get());
            try
            {
                switch (part)
                {
                    case ISimpleAssignmentOperation assignment:
                        InitialiseMember(made, assignment, frame);
                        break;
                    case IMemberInitializerOperation nested:
                        InitialiseNested(nested, frame);
                        break;
                    case IInvocationOperation add:
                        if (Evaluate(add, frame) is Unknown)
                        {
                            throw new RefusedSignal();
                        }

                        break;
                    case IInvalidOperation:
                        break;
                    default:
                        Refuse(part, frame, $"this part of an initialiser ({part.Kind}) is not evaluated", "write plain assignments");
                        throw new RefusedSignal();
                }
            }
            finally
            {
                implicits.Pop();
            }
        }
    }

    private void InitialiseMember(Storage made, ISimpleAssignmentOperation assignment, Frame frame)
    {
        switch (assignment.Target)
        {
            case IPropertyReferenceOperation { Arguments.IsEmpty: true } target when made.Get() is not UserObject:
                var value = Evaluate(assignment.Value, frame);
                SetDatum(made.Get()!, target.Property, value, assignment.Value, frame);
                break;
            case IPropertyReferenceOperation { Arguments.IsEmpty: true } target:
                SetProperty(made, Resolve(target.Property, frame), Evaluate(assignment.Value, frame), assignment, frame, initialising: true);
                break;
            case IFieldReferenceOperation target:
                SetField(made, target.Field, Evaluate(assignment.Value, frame), assignment, frame);
                break;
            case IInvalidOperation:
                break;
            default:
                if (SimpleAssignment(assignment, frame) is Unknown)
                {
                    throw new RefusedSignal();
                }

                break;
        }
    }

    private void InitialiseNested(IMemberInitializerOperation nested, Frame frame)
    {
        var value = Evaluate(nested.InitializedMember, frame);
        if (value is Unknown)
        {
            throw new RefusedSignal();
        }

        if (value is null)
        {
            throw Raise(new NullReferenceException(), nested, frame);
        }

        if (value is ValueType || value is UserObject { Type.IsValueType: true })
        {
            var location = Locate(nested.InitializedMember, frame);
            Initialise(location, nested.Initializer, frame);
            return;
        }

        Initialise(new Holder(value), nested.Initializer, frame);
    }

    /// <summary>Gives a property of a library's object its value, and notes where it was written. An unknown value leaves the property without one and is noted too.</summary>
    private void SetDatum(object owner, IPropertySymbol property, object? value, IOperation written, Frame frame)
    {
        var record = Provenance.Find(owner);
        if (value is Unknown)
        {
            if (record is null)
            {
                throw new RefusedSignal();
            }

            record.Set(property.Name, OriginAt(written, frame));
            Provenance.SetUnknown(record, property.Name);
            Clear(owner, property.Name);
            return;
        }

        if (property.SetMethod is not { } setter)
        {
            return; // the compiler reports it
        }

        var member = library.Find(Resolve(setter, frame));
        if (member.Method is not { } method)
        {
            Refuse(written, frame, member.Refusal!, member.Remedy);
            if (record is null)
            {
                throw new RefusedSignal();
            }

            record.Set(property.Name, OriginAt(written, frame));
            Provenance.SetUnknown(record, property.Name);
            return;
        }

        Exception raised;
        try
        {
            method.Invoke(owner, DoNotWrapExceptions, null, [value], null);
            record?.Set(property.Name, OriginAt(written, frame));
            return;
        }
        catch (Exception exception) when (exception is not Signal and not InsufficientExecutionStackException)
        {
            raised = exception is TargetInvocationException { InnerException: { } inner } ? inner : exception;
        }

        throw new ThrowSignal(raised.GetType().FullName!, raised.Message, OriginAt(written, frame));
    }

    /// <summary>A copy must not keep its original's datum where a new one was written that could not be worked out. Text stays: it only names.</summary>
    private static void Clear(object owner, string datum)
    {
        if (owner.GetType().GetProperty(datum) is { CanWrite: true } property && property.PropertyType != typeof(string))
        {
            property.SetValue(owner, property.PropertyType.IsValueType ? Activator.CreateInstance(property.PropertyType) : null);
        }
    }

    private object? With(IWithOperation operation, Frame frame)
    {
        var operand = Evaluate(operation.Operand, frame);
        switch (operand)
        {
            case Unknown:
                return operand;
            case null:
                throw Raise(new NullReferenceException(), operation, frame);
            case UserObject user:
                return Initialised(CopyOf(user, operation, frame), operation.Initializer, frame);
            case ValueType:
                return Initialised(System.Runtime.CompilerServices.RuntimeHelpers.GetObjectValue(operand), operation.Initializer, frame);
            default:
                var copy = Clone(operand);
                Provenance.EnterCopy(copy, operand, OriginAt(operation, frame));
                return Initialised(copy, operation.Initializer, frame);
        }
    }

    private UserObject CopyOf(UserObject user, IOperation at, Frame frame)
    {
        // A copy constructor that the source writes itself may do more than copy.
        foreach (var constructor in user.Type.InstanceConstructors)
        {
            if (user.Type is { IsRecord: true, IsValueType: false } && !constructor.IsImplicitlyDeclared && constructor.Parameters is [{ Type: var type }] && SymbolEqualityComparer.Default.Equals(type, user.Type))
            {
                return Construct(user.Type, constructor, [user], at, frame) as UserObject ?? throw new RefusedSignal();
            }
        }

        return user.Copy(run);
    }

    /// <summary>A copy of a library's record, made as <c>with</c> makes it.</summary>
    private object Clone(object record)
    {
        var type = record.GetType();
        if (!clones.TryGetValue(type, out var clone))
        {
            clones[type] = clone = type.GetMethod("<Clone>$", BindingFlags.Public | BindingFlags.Instance);
        }

        return clone!.Invoke(record, DoNotWrapExceptions, null, null, null)!;
    }

    private object? FieldReference(IFieldReferenceOperation operation, Frame frame)
    {
        var field = operation.Field;
        if (field.IsStatic)
        {
            return field.HasConstantValue ? Constant(field.ConstantValue, operation, frame) : ReadStatic(field, operation, frame);
        }

        if (operation.Instance is not { } instance)
        {
            return Unknown.Value;
        }

        return ReadField(Evaluate(instance, frame), field, operation, frame);
    }

    private object? ReadField(object? self, IFieldSymbol field, IOperation at, Frame frame)
    {
        switch (self)
        {
            case Unknown:
                return self;
            case null:
                throw Raise(new NullReferenceException(), at, frame);
            case UserObject user when user.Layout.TryGet(field, out var slot):
                return user.Slots[slot];
            default:
                return TupleField(self, field) is { } info ? info.GetValue(self) : Refuse(at, frame, $"the field '{field.Name}' is not evaluated", "write the value itself");
        }
    }

    private static FieldInfo? TupleField(object self, IFieldSymbol field) =>
        IsTuple(self) && (field.CorrespondingTupleField ?? field) is { Name: var name } ? self.GetType().GetField(name) : null;

    private object? PropertyReference(IPropertyReferenceOperation operation, Frame frame) => ValueOf(PropertyReferenceOrPlace(operation, frame));

    /// <summary>The value of a property; of one that gives a reference the place to which it refers.</summary>
    private object? PropertyReferenceOrPlace(IPropertyReferenceOperation operation, Frame frame)
    {
        var property = Resolve(operation.Property, frame);
        if (operation.Instance is null)
        {
            return property.IsStatic ? StaticProperty(property, operation, frame) : Silent();
        }

        var instance = operation.Instance;
        var receiver = property.GetMethod is { } asked && types.IsSource(asked) ? Receiver(instance, asked, frame) : Evaluate(instance, frame);
        var self = ValueOf(receiver);
        if (self is Unknown)
        {
            return self;
        }

        if (self is null && instance.Type?.OriginalDefinition.SpecialType != SpecialType.System_Nullable_T)
        {
            throw Raise(new NullReferenceException(), operation, frame);
        }

        if (property.GetMethod is not { } getter)
        {
            return Unknown.Value;
        }

        if (self is not UserObject && Provenance.AnyUnknown && Provenance.Find(self!) is { HasUnknown: true } record && record.IsUnknown(property.Name))
        {
            run.HasCause = true; // told where the datum is
            return Unknown.Value;
        }

        var arguments = Arguments(operation.Arguments, getter, frame);
        if (property.IsIndexer && HasUnknown(arguments))
        {
            return Unknown.Value;
        }

        return Call(instance is IInstanceReferenceOperation { Syntax: BaseExpressionSyntax } ? getter : Override(getter, self), receiver, arguments, operation, frame);
    }

    private object? StaticProperty(IPropertySymbol property, IPropertyReferenceOperation at, Frame frame)
    {
        if (property.IsAbstract || property.IsVirtual)
        {
            return property.GetMethod is { } asked && Constrained(at.ConstrainedToType, asked, frame) is { AssociatedSymbol: IPropertySymbol found }
                ? StaticProperty(found, at, frame)
                : Refuse(at, frame, "a static member of a type parameter is not evaluated", "call the type's own member");
        }

        if (TablePart(property, at, frame) is { } part)
        {
            return part;
        }

        if (types.Kind(property.ContainingAssembly) != AssemblyKind.Source)
        {
            return ForeignStatic(property, at, frame);
        }

        if (IsAutomatic(property))
        {
            return ReadStatic(property, at, frame);
        }

        return property.GetMethod is { } getter ? CallSource(getter, null, [], at, frame) : Unknown.Value;
    }

    /// <summary>Whether a property of the source has a field behind it and no body of its own to read it.</summary>
    private bool IsAutomatic(IPropertySymbol property)
    {
        property = property.PartialImplementationPart ?? property;
        return property.GetMethod is { } getter && bodies.Body(getter.OriginalDefinition) is null;
    }

    private IPropertySymbol Resolve(IPropertySymbol property, Frame frame)
    {
        if (frame.Activation.TypeArguments is null || property.ContainingType?.IsGenericType != true)
        {
            return property;
        }

        var owner = SubstituteNamed(property.ContainingType, frame.Activation.TypeArguments);
        foreach (var member in owner.GetMembers(property.Name))
        {
            if (SymbolEqualityComparer.Default.Equals(member.OriginalDefinition, property.OriginalDefinition))
            {
                return (IPropertySymbol)member;
            }
        }

        return property;
    }

    /// <summary>Makes an object of a source type.</summary>
    private object? Construct(INamedTypeSymbol type, IMethodSymbol constructor, object?[] arguments, IOperation at, Frame frame)
    {
        if (type.IsAbstract)
        {
            return Unknown.Value;
        }

        var made = NewObject(type);
        Storage holder = new Holder(made);
        return RunConstructor(holder, type, constructor, arguments, at, frame) ? holder.Get() : Unknown.Value;
    }

    /// <summary>Runs a constructor on a new object; false where it cannot be evaluated.</summary>
    private bool RunConstructor(Storage made, INamedTypeSymbol type, IMethodSymbol constructor, object?[] arguments, IOperation at, Frame frame)
    {
        var site = new Origin(at.Syntax, frame.Activation.Site, run.Member);
        var self = type.IsValueType ? made : made.Get();
        var activation = new Activation(run, constructor, self, site, ArgumentsOfChain(type));
        var inner = new Frame(null, activation);
        var definition = constructor.OriginalDefinition;
        Bind(definition, arguments, inner);
        Enter(at, frame);
        try
        {
            if (constructor.IsImplicitlyDeclared)
            {
                return ImplicitConstructor(made, type, arguments, constructor, at, inner);
            }

            if (bodies.Syntax(definition) is TypeDeclarationSyntax declaration)
            {
                return PrimaryConstructor(made, type, definition, declaration, at, inner);
            }

            return bodies.Body(definition) is IConstructorBodyOperation body ? ExplicitConstructor(made, type, body, at, inner) : FieldInitialisers(made, type, inner);
        }
        finally
        {
            Leave();
        }
    }

    private bool ImplicitConstructor(Storage made, INamedTypeSymbol type, object?[] arguments, IMethodSymbol constructor, IOperation at, Frame inner)
    {
        if (type.IsValueType)
        {
            return true;
        }

        // The copy constructor of a record.
        if (type.IsRecord && constructor.Parameters.Length == 1 && arguments is [UserObject original] && made.Get() is UserObject copy)
        {
            Array.Copy(original.Slots, copy.Slots, Math.Min(original.Slots.Length, copy.Slots.Length));
            return true;
        }

        return FieldInitialisers(made, type, inner) && BaseConstructor(made, type, at, inner);
    }

    private bool BaseConstructor(Storage made, INamedTypeSymbol type, IOperation at, Frame inner)
    {
        if (type.BaseType is not { SpecialType: not (SpecialType.System_Object or SpecialType.System_ValueType) } parent)
        {
            return true;
        }

        if (!types.IsSource(parent))
        {
            Refuse(at, inner, $"'{type.Name}' derives from '{parent.ToDisplayString()}' of another assembly", "do not derive from library classes");
            return false;
        }

        var fitting = new List<IMethodSymbol>();
        foreach (var candidate in parent.InstanceConstructors)
        {
            if (candidate.Parameters.IsEmpty)
            {
                return RunConstructor(made, parent, candidate, [], at, inner);
            }

            if (candidate.Parameters.All(parameter => parameter.IsOptional || parameter.IsParams))
            {
                fitting.Add(candidate);
            }
        }

        return fitting switch
        {
            [] => true, // the compiler reports it
            [var only] when only.Parameters.All(parameter => parameter.IsOptional && parameter.GetAttributes().IsEmpty) =>
                RunConstructor(made, parent, only, [.. only.Parameters.Select(parameter => DefaultOf(parameter, inner))], at, inner),
            _ => Unsupported(at, inner),
        };
    }

    private object? DefaultOf(IParameterSymbol parameter, Frame frame)
    {
        var type = Resolve(parameter.Type, frame);
        return parameter.ExplicitDefaultValue is not { } value ? Default(type) : Underlying(type) is { TypeKind: TypeKind.Enum } named ? EnumValue(named, value) : value;
    }

    private bool ExplicitConstructor(Storage made, INamedTypeSymbol type, IConstructorBodyOperation body, IOperation at, Frame inner)
    {
        var initializer = body.Initializer;
        while (initializer is IExpressionStatementOperation statement)
        {
            initializer = statement.Operation;
        }

        var call = initializer as IInvocationOperation;
        var toSelf = call is not null && SymbolEqualityComparer.Default.Equals(call.TargetMethod.ContainingType.OriginalDefinition, type.OriginalDefinition);
        if (!toSelf && !FieldInitialisers(made, type, inner))
        {
            return false;
        }

        var chained = call is null
            ? BaseConstructor(made, type, at, inner)
            : call.TargetMethod.ContainingType.SpecialType is SpecialType.System_Object or SpecialType.System_ValueType || ChainedConstructor(made, call, inner);
        if (!chained)
        {
            return false;
        }

        Execute(body.BlockBody ?? (IOperation?)body.ExpressionBody ?? body, inner);
        return true;
    }

    private bool ChainedConstructor(Storage made, IInvocationOperation call, Frame inner)
    {
        var target = Resolve(call.TargetMethod, inner);
        if (!types.IsSource(target.ContainingType))
        {
            Refuse(call, inner, $"'{target.ContainingType.ToDisplayString()}' is a class of another assembly", "do not derive from library classes");
            return false;
        }

        return RunConstructor(made, target.ContainingType, target, Arguments(call.Arguments, target, inner), call, inner);
    }

    private bool PrimaryConstructor(Storage made, INamedTypeSymbol type, IMethodSymbol definition, TypeDeclarationSyntax declaration, IOperation at, Frame inner)
    {
        var user = (UserObject)made.Get()!;
        foreach (var parameter in definition.Parameters)
        {
            var value = Variable(parameter, at, inner);
            if (user.Layout.TryGet(parameter, out var slot) || (Positional(type, parameter) is { } property && user.Layout.TryGet(property, out slot)))
            {
                user.Slots[slot] = value;
            }
        }

        if (!FieldInitialisers(made, type, inner))
        {
            return false;
        }

        if (declaration.BaseList is { } list)
        {
            foreach (var entry in list.Types)
            {
                if (entry is PrimaryConstructorBaseTypeSyntax primary)
                {
                    var operation = bodies.Operation(primary);
                    while (operation is IExpressionStatementOperation statement)
                    {
                        operation = statement.Operation;
                    }

                    return operation is IInvocationOperation call ? ChainedConstructor(made, call, inner) : Unsupported(at, inner);
                }
            }
        }

        return BaseConstructor(made, type, at, inner);
    }

    private bool Unsupported(IOperation at, Frame frame)
    {
        Refuse(at, frame, "this constructor is not evaluated", "write a plain constructor");
        return false;
    }

    /// <summary>The property that a record makes of a parameter, unless the source declares it itself.</summary>
    private static IPropertySymbol? Positional(INamedTypeSymbol type, IParameterSymbol parameter)
    {
        foreach (var member in type.OriginalDefinition.GetMembers(parameter.Name))
        {
            if (member is IPropertySymbol { DeclaringSyntaxReferences: [var reference] } property && reference.GetSyntax() is ParameterSyntax)
            {
                return property;
            }
        }

        return null;
    }

    private bool FieldInitialisers(Storage made, INamedTypeSymbol type, Frame inner)
    {
        foreach (var member in type.OriginalDefinition.GetMembers())
        {
            ISymbol? target = member switch
            {
                IFieldSymbol { IsStatic: false, IsImplicitlyDeclared: false, AssociatedSymbol: null } field => field,
                IPropertySymbol { IsStatic: false } property => property,
                _ => null,
            };
            if (target is not null && bodies.Initialiser(target) is { } initialiser && made.Get() is UserObject user && user.Layout.TryGet(target, out var slot))
            {
                user.Slots[slot] = Evaluate(initialiser, inner);
            }
        }

        return true;
    }

    private object? AnonymousObject(IAnonymousObjectCreationOperation operation, Frame frame)
    {
        if (TypeOf(operation, frame) is not INamedTypeSymbol type)
        {
            return Unknown.Value;
        }

        var made = NewObject(type);
        foreach (var part in operation.Initializers)
        {
            if (part is ISimpleAssignmentOperation { Target: IPropertyReferenceOperation target } assignment)
            {
                var value = Evaluate(assignment.Value, frame);
                if (made.Layout.TryGet(target.Property, out var slot))
                {
                    made.Slots[slot] = value;
                }
            }
        }

        return made;
    }

    private object? TypeParameterCreation(ITypeParameterObjectCreationOperation operation, Frame frame)
    {
        if (TypeOf(operation, frame) is not INamedTypeSymbol type)
        {
            return Refuse(operation, frame, "the type that is made here is not known", "make the object where its type is known");
        }

        if (type.IsValueType)
        {
            return Initialised(Default(type), operation.Initializer, frame);
        }

        foreach (var constructor in type.InstanceConstructors)
        {
            if (constructor.Parameters.IsEmpty)
            {
                var made = types.IsSource(type) ? Construct(type, constructor, [], operation, frame) : CallLibrary(constructor, null, [], operation, frame);
                return Initialised(made, operation.Initializer, frame);
            }
        }

        return Refuse(operation, frame, $"'{type.Name}' is not made this way", "make the object where its type is known");
    }
}
