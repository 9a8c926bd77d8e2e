using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <summary>
/// Whether code could change anything that outlives it. Asked only where something unknown keeps code from being carried out:
/// what could have changed is then unknown too. Errs towards yes.
/// </summary>
internal sealed class Effects(Bodies bodies, TypeMap types, LibraryMembers library)
{
    private readonly Dictionary<IMethodSymbol, bool> methods = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<IMethodSymbol, bool> iterators = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<IOperation, bool> yields = [];
    private readonly Dictionary<IOperation, bool> operations = [];

    /// <summary>Whether carrying out the operation could change a variable, object or static outside it.</summary>
    public bool Has(IOperation operation)
    {
        if (!operations.TryGetValue(operation, out var has))
        {
            operations[operation] = has = Walk(operation, operation.Syntax);
        }

        return has;
    }

    /// <summary>Whether a call of the method could change anything but its own variables and, in a constructor, its own object.</summary>
    public bool Of(IMethodSymbol method)
    {
        if (!types.IsSource(method))
        {
            var member = library.Find(method);
            return member.Rule.Mutates || member.Method is null;
        }

        method = method.OriginalDefinition;
        if (!methods.TryGetValue(method, out var has))
        {
            methods[method] = false; // a recursion adds nothing to what the rest of the body does
            methods[method] = has = Look(method);
        }

        return has;
    }

    public bool IsIterator(IMethodSymbol method)
    {
        method = method.OriginalDefinition;
        if (!iterators.TryGetValue(method, out var found))
        {
            iterators[method] = found = method.ReturnType.Name is "IEnumerable" or "IEnumerator" && BodyOf(method) is { } body && Yields(body);
        }

        return found;
    }

    /// <summary>Whether a statement holds a yield of its own method.</summary>
    public bool Yields(IOperation statement)
    {
        if (yields.TryGetValue(statement, out var found))
        {
            return found;
        }

        found = statement.Kind is OperationKind.YieldReturn or OperationKind.YieldBreak;
        if (!found && statement is not (IAnonymousFunctionOperation or ILocalFunctionOperation))
        {
            foreach (var child in statement.ChildOperations)
            {
                if (Yields(child))
                {
                    found = true;
                    break;
                }
            }
        }

        return yields[statement] = found;
    }

    private IOperation? BodyOf(IMethodSymbol method) =>
        method.MethodKind == MethodKind.LocalFunction && bodies.Syntax(method) is { } syntax
            ? (bodies.Operation(syntax) as ILocalFunctionOperation)?.Body
            : bodies.Body(method);

    private bool Look(IMethodSymbol method)
    {
        if (method.IsAbstract || method.IsVirtual)
        {
            return true;
        }

        var body = BodyOf(method);
        return body is null
            ? method.MethodKind == MethodKind.PropertySet
            : Walk(body, bodies.Syntax(method) ?? body.Syntax, method.MethodKind == MethodKind.Constructor);
    }

    private bool Walk(IOperation operation, SyntaxNode scope, bool ownObject = false)
    {
        switch (operation)
        {
            case ISimpleAssignmentOperation { Parent: IObjectOrCollectionInitializerOperation } assignment:
                return Walk(assignment.Value, scope, ownObject);
            case IAssignmentOperation assignment when !IsOwn(assignment.Target, scope, ownObject):
            case IIncrementOrDecrementOperation increment when !IsOwn(increment.Target, scope, ownObject):
            case IArgumentOperation { Parameter.RefKind: RefKind.Ref or RefKind.Out } argument when !IsOwn(argument.Value, scope, ownObject):
            case IInvocationOperation { TargetMethod.MethodKind: MethodKind.DelegateInvoke }:
            case IInvocationOperation { TargetMethod.MethodKind: not MethodKind.DelegateInvoke } invocation when Calls(invocation):
            case IObjectCreationOperation { Constructor: { } constructor } when types.IsSource(constructor) && Of(constructor):
            case IPropertyReferenceOperation { Property.GetMethod: { } getter } when types.IsSource(getter) && Of(getter):
                return true;
        }

        foreach (var child in operation.ChildOperations)
        {
            if (Walk(child, scope, ownObject))
            {
                return true;
            }
        }

        return false;
    }

    private bool Calls(IInvocationOperation invocation)
    {
        // Filling a collection that the same initialiser makes is part of making it.
        var creates = invocation.Parent is IObjectOrCollectionInitializerOperation || invocation.Instance is IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ImplicitReceiver };
        return !creates && Of(invocation.TargetMethod);
    }

    private static bool IsOwn(IOperation target, SyntaxNode scope, bool ownObject)
    {
        switch (target)
        {
            case ILocalReferenceOperation local:
                return IsInside(local.Local, scope);
            case IParameterReferenceOperation parameter:
                return IsInside(parameter.Parameter, scope);
            case IDeclarationExpressionOperation or IDiscardOperation:
                return true;
            case ITupleOperation tuple:
                foreach (var element in tuple.Elements)
                {
                    if (!IsOwn(element, scope, ownObject))
                    {
                        return false;
                    }
                }

                return true;
            case IMemberReferenceOperation { Instance: IInstanceReferenceOperation { ReferenceKind: InstanceReferenceKind.ContainingTypeInstance } }:
                return ownObject;
            case IMemberReferenceOperation { Instance: IInstanceReferenceOperation }:
                return true;
            default:
                return false;
        }
    }

    private static bool IsInside(ISymbol variable, SyntaxNode scope)
    {
        foreach (var reference in variable.DeclaringSyntaxReferences)
        {
            if (reference.SyntaxTree == scope.SyntaxTree && scope.Span.Contains(reference.Span))
            {
                return true;
            }
        }

        return false;
    }
}
