using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;
using RailRules.Analyzers.Evaluation;
using RailRules.Analyzers.Generation;

namespace RailRules.Analyzers.Choosing;

/// <summary>
/// The expression that chooses the part of a place. <c>.As("F1")</c> and a <c>with</c> that states what belongs to the place stay around it; fields, locals and parameters
/// that only pass a part on are followed to where it was chosen; a member that makes a part of its own is a part's definition, and the place that names it is what chooses.
/// </summary>
internal sealed class PartPick
{
    private static readonly HashSet<string> OfThePlace = new(StringComparer.Ordinal) { nameof(Element.Designator), nameof(Element.Surroundings), nameof(Element.Policy) };

    private PartPick(ExpressionSyntax target, ImmutableArray<AssignmentExpressionSyntax> kept)
    {
        Target = target;
        Kept = kept;
    }

    /// <summary>The expression that another part replaces.</summary>
    public ExpressionSyntax Target { get; }

    /// <summary>What the expression states of the place itself, and what stays: designator, surroundings, margins.</summary>
    public ImmutableArray<AssignmentExpressionSyntax> Kept { get; }

    /// <summary>The pick behind an expression; null where another part cannot be put in its stead without changing more than the part.</summary>
    public static PartPick? Of(Origin? origin, Compilation compilation, CancellationToken cancellation) =>
        origin is not null && Expression(origin.Node) is { } expression ? new Search(compilation, cancellation).From(expression, origin.Caller, ofMember: false, 0) : null;

    /// <summary>The text that takes the target's place.</summary>
    public string Text(string part, bool isElement)
    {
        if (Kept.IsEmpty)
        {
            return part;
        }

        if (isElement && Kept is [{ Left: IdentifierNameSyntax { Identifier.ValueText: nameof(Element.Designator) }, Right: var designator }] && !designator.IsKind(SyntaxKind.NullLiteralExpression))
        {
            return $"{part}.As({designator})";
        }

        var text = $"{part} with {{ {string.Join(", ", Kept.Select(assignment => assignment.ToString()))} }}";
        return Target.Parent is MemberAccessExpressionSyntax or WithExpressionSyntax or PostfixUnaryExpressionSyntax or CastExpressionSyntax ? "(" + text + ")" : text;
    }

    private static ExpressionSyntax? Expression(SyntaxNode node) => node switch
    {
        ExpressionSyntax expression => expression,
        ExpressionElementSyntax element => element.Expression,
        ArgumentSyntax argument => argument.Expression,
        _ => null,
    };

    private static ImmutableArray<AssignmentExpressionSyntax> Assignments(InitializerExpressionSyntax? initializer) => initializer is null ? [] : [.. initializer.Expressions.OfType<AssignmentExpressionSyntax>()];

    private static bool IsOfThePlace(AssignmentExpressionSyntax assignment) => assignment.Left is IdentifierNameSyntax name && OfThePlace.Contains(name.Identifier.ValueText);

    private sealed class Search(Compilation compilation, CancellationToken cancellation)
    {
        /// <param name="expression">The expression.</param>
        /// <param name="caller">The call in whose body it stands.</param>
        /// <param name="ofMember">Whether a member that the place names was followed to get there: what makes a part then defines one.</param>
        /// <param name="depth">How far it was followed.</param>
        internal PartPick? From(ExpressionSyntax expression, Origin? caller, bool ofMember, int depth)
        {
            cancellation.ThrowIfCancellationRequested();
            if (depth > 50 || !compilation.ContainsSyntaxTree(expression.SyntaxTree))
            {
                return null;
            }

            switch (expression)
            {
                case ParenthesizedExpressionSyntax inner:
                    return From(inner.Expression, caller, ofMember, depth + 1);
                case CastExpressionSyntax cast:
                    return From(cast.Expression, caller, ofMember, depth + 1);
                case PostfixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.SuppressNullableWarningExpression } suppressed:
                    return From(suppressed.Operand, caller, ofMember, depth + 1);
                case WithExpressionSyntax with when Assignments(with.Initializer).All(IsOfThePlace):
                    return From(with.Expression, caller, ofMember, depth + 1);
                case WithExpressionSyntax with:
                    return ofMember ? null : new PartPick(with, [.. Assignments(with.Initializer).Where(IsOfThePlace)]);
                case BaseObjectCreationExpressionSyntax creation:
                    return ofMember || IsOwnMember(creation) ? null : new PartPick(creation, [.. Assignments(creation.Initializer).Where(IsOfThePlace)]);
                case InvocationExpressionSyntax invocation:
                    return FromCall(invocation, caller, ofMember, depth);
                case IdentifierNameSyntax or MemberAccessExpressionSyntax:
                    return FromName(expression, caller, ofMember, depth);
                case ElementAccessExpressionSyntax when !ofMember:
                    return new PartPick(expression, []);
                default:
                    return null;
            }
        }

        /// <summary>Whether a creation is itself the value of a static member, so that the member is a part's definition.</summary>
        private static bool IsOwnMember(SyntaxNode creation) =>
            creation.Parent is ArrowExpressionClauseSyntax { Parent: PropertyDeclarationSyntax } or EqualsValueClauseSyntax { Parent: PropertyDeclarationSyntax or VariableDeclaratorSyntax { Parent.Parent: FieldDeclarationSyntax } };

        private PartPick? FromCall(InvocationExpressionSyntax call, Origin? caller, bool ofMember, int depth)
        {
            if (compilation.GetSemanticModel(call.SyntaxTree).GetSymbolInfo(call, cancellation).Symbol is not IMethodSymbol method)
            {
                return null;
            }

            if (method.Name == nameof(Placement.As) && (method.ReducedFrom ?? method).ContainingType.ToDisplayString() == "RailRules.Placement")
            {
                var placed = method.ReducedFrom is not null ? (call.Expression as MemberAccessExpressionSyntax)?.Expression : call.ArgumentList.Arguments.FirstOrDefault()?.Expression;
                return placed is null ? null : From(placed, caller, ofMember, depth + 1);
            }

            // A table's Find names a part; any other method makes one.
            return GeneratedTables.IsTable(method.ContainingType) || !ofMember ? new PartPick(call, []) : null;
        }

        private PartPick? FromName(ExpressionSyntax name, Origin? caller, bool ofMember, int depth)
        {
            switch (compilation.GetSemanticModel(name.SyntaxTree).GetSymbolInfo(name, cancellation).Symbol)
            {
                case IPropertySymbol property when GeneratedTables.IsTable(property.ContainingType):
                    return new PartPick(name, []);
                case IParameterSymbol parameter:
                    return Argument(parameter, name, caller) is ({ } argument, var from) ? From(argument, from, ofMember, depth + 1) : null;
                case ILocalSymbol local:
                    return Initializer(local, name) is { } value ? From(value, caller, ofMember, depth + 1) : null;
                case (IFieldSymbol or IPropertySymbol) and { IsStatic: true } member:
                    // A member that only names another part is followed; one that makes a part is a definition, and this place chooses it.
                    var chosen = Initializer(member) is { } initializer ? From(initializer, null, ofMember: true, depth + 1) : null;
                    return chosen ?? new PartPick(name, []);
                default:
                    return null;
            }
        }

        /// <summary>What the nearest call of a parameter's method gives for it, and the call in whose body that stands.</summary>
        private (ExpressionSyntax? Argument, Origin? Caller) Argument(IParameterSymbol parameter, SyntaxNode use, Origin? caller)
        {
            if (IsAssigned(parameter, use))
            {
                return default;
            }

            for (; caller is not null && compilation.ContainsSyntaxTree(caller.Node.SyntaxTree); caller = caller.Caller)
            {
                var (called, arguments) = compilation.GetSemanticModel(caller.Node.SyntaxTree).GetOperation(caller.Node, cancellation) switch
                {
                    IInvocationOperation invocation => (invocation.TargetMethod, invocation.Arguments),
                    IObjectCreationOperation { Constructor: { } constructor } creation => (constructor, creation.Arguments),
                    _ => (null, []),
                };
                if (called is null || !SymbolEqualityComparer.Default.Equals((called.ReducedFrom ?? called).OriginalDefinition, parameter.ContainingSymbol.OriginalDefinition))
                {
                    continue;
                }

                var given = arguments.FirstOrDefault(argument => argument.ArgumentKind == ArgumentKind.Explicit && argument.Parameter?.Ordinal == parameter.Ordinal);
                return given is null ? default : (Expression(Explicit(given.Value).Syntax), caller.Caller);
            }

            return default;

            static IOperation Explicit(IOperation value)
            {
                while (value is IConversionOperation { IsImplicit: true } conversion)
                {
                    value = conversion.Operand;
                }

                return value;
            }
        }

        private ExpressionSyntax? Initializer(ILocalSymbol local, SyntaxNode use) =>
            local.DeclaringSyntaxReferences is [var reference] && reference.GetSyntax(cancellation) is VariableDeclaratorSyntax { Initializer.Value: { } value } && !IsAssigned(local, use) ? value : null;

        private ExpressionSyntax? Initializer(ISymbol member) => member.DeclaringSyntaxReferences is [var reference]
            ? reference.GetSyntax(cancellation) switch
            {
                VariableDeclaratorSyntax variable => variable.Initializer?.Value,
                PropertyDeclarationSyntax property => property.ExpressionBody?.Expression ?? property.Initializer?.Value,
                _ => null,
            }
            : null;

        /// <summary>Whether a local or parameter gets another value than the one it starts with.</summary>
        private bool IsAssigned(ISymbol symbol, SyntaxNode use)
        {
            var body = use.Ancestors().LastOrDefault(node => node is MemberDeclarationSyntax and not BaseTypeDeclarationSyntax and not BaseNamespaceDeclarationSyntax) ?? use.SyntaxTree.GetRoot(cancellation);
            var model = compilation.GetSemanticModel(use.SyntaxTree);
            return body.DescendantNodes().Any(node => Changed(node) is IdentifierNameSyntax name && name.Identifier.ValueText == symbol.Name && SymbolEqualityComparer.Default.Equals(model.GetSymbolInfo(name, cancellation).Symbol, symbol));

            static ExpressionSyntax? Changed(SyntaxNode node) => node switch
            {
                AssignmentExpressionSyntax assignment => assignment.Left,
                ArgumentSyntax { RefKindKeyword.RawKind: not 0 } argument => argument.Expression,
                ArgumentSyntax { Parent: TupleExpressionSyntax { Parent: AssignmentExpressionSyntax } } item => item.Expression,
                _ => null,
            };
        }
    }
}
