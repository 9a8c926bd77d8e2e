using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;
using Microsoft.CodeAnalysis.Text;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Finds what stands in the source behind a symbol: initialisers and bodies as operations. Binding is most of the cost of an analysis, so each is found once.</summary>
internal sealed class Bodies(Compilation compilation)
{
    private readonly Dictionary<ISymbol, IOperation?> initialisers = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<IMethodSymbol, IOperation?> bodies = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<IMethodSymbol, IMethodSymbol?> extensions = new(SymbolEqualityComparer.Default);
    private readonly Dictionary<SyntaxTree, SemanticModel> models = [];
    private readonly Dictionary<SyntaxNode, List<TextSpan>> errors = [];
    private readonly Dictionary<SyntaxNode, ITypeSymbol?> elementTypes = [];

    public CancellationToken Cancellation { get; set; }

    /// <summary>The value of a field's or automatic property's initialiser; null where there is none.</summary>
    public IOperation? Initialiser(ISymbol member)
    {
        if (!initialisers.TryGetValue(member, out var found))
        {
            initialisers[member] = found = FindInitialiser(member);
        }

        return found;
    }

    /// <summary>The body of a method, accessor or constructor: a block, an expression body's block, or a constructor body; null where there is none.</summary>
    public IOperation? Body(IMethodSymbol method)
    {
        if (!bodies.TryGetValue(method, out var found))
        {
            bodies[method] = found = FindBody(method);
        }

        return found;
    }

    /// <summary>The operation of any piece of syntax.</summary>
    public IOperation? Operation(SyntaxNode node) => Model(node.SyntaxTree)?.GetOperation(node, Cancellation);

    /// <summary>Whether the compiler reports errors within the node.</summary>
    public bool HasErrors(SyntaxNode node)
    {
        if (Model(node.SyntaxTree) is not { } model)
        {
            return false;
        }

        foreach (var diagnostic in model.GetDiagnostics(node.Span, Cancellation))
        {
            if (diagnostic.Severity == DiagnosticSeverity.Error)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether the compiler reports an error at the node, or one that lies around it or inside it.</summary>
    public bool IsInError(SyntaxNode node)
    {
        var member = node;
        while (member.Parent is not null and not TypeDeclarationSyntax and not CompilationUnitSyntax)
        {
            member = member.Parent;
        }

        if (!errors.TryGetValue(member, out var spans))
        {
            spans = [];
            if (Model(node.SyntaxTree) is { } model)
            {
                foreach (var diagnostic in model.GetDiagnostics(member.Span, Cancellation))
                {
                    if (diagnostic.Severity == DiagnosticSeverity.Error && !diagnostic.IsWarningAsError)
                    {
                        spans.Add(diagnostic.Location.SourceSpan);
                    }
                }
            }

            errors[member] = spans;
        }

        foreach (var span in spans)
        {
            if (span.IntersectsWith(node.Span))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The type of the elements of what a foreach goes through.</summary>
    public ITypeSymbol? ElementType(SyntaxNode loop)
    {
        if (!elementTypes.TryGetValue(loop, out var type))
        {
            elementTypes[loop] = type = loop is CommonForEachStatementSyntax each && Model(loop.SyntaxTree) is { } model ? model.GetForEachStatementInfo(each).ElementType : null;
        }

        return type;
    }

    /// <summary>The member of an extension block for which a static method stands; null for other methods.</summary>
    public IMethodSymbol? ExtensionMember(IMethodSymbol method)
    {
        if (!extensions.TryGetValue(method, out var found))
        {
            extensions[method] = found = FindExtensionMember(method);
        }

        return found;
    }

    private IMethodSymbol? FindExtensionMember(IMethodSymbol method)
    {
        if (method.ContainingType is not { IsStatic: true, ExtensionParameter: null } || Syntax(method) is not { } syntax)
        {
            return null;
        }

        for (var at = syntax.Parent; at is not null; at = at.Parent)
        {
            if (at is TypeDeclarationSyntax type)
            {
                return type.Keyword.Text == "extension" && Model(syntax.SyntaxTree)?.GetDeclaredSymbol(syntax, Cancellation) is IMethodSymbol member && !SymbolEqualityComparer.Default.Equals(member, method) ? member : null;
            }
        }

        return null;
    }

    /// <summary>The declaration's syntax, where it lies in this compilation.</summary>
    public SyntaxNode? Syntax(ISymbol symbol)
    {
        foreach (var reference in symbol.DeclaringSyntaxReferences)
        {
            if (compilation.ContainsSyntaxTree(reference.SyntaxTree))
            {
                return reference.GetSyntax(Cancellation);
            }
        }

        return null;
    }

#pragma warning disable RS1030 // Initialisers of other trees and members must be read; this is the only place where models are made, and the driver's cached ones are returned.
    private SemanticModel? Model(SyntaxTree tree)
    {
        if (!models.TryGetValue(tree, out var model))
        {
            if (!compilation.ContainsSyntaxTree(tree))
            {
                return null;
            }

            models[tree] = model = compilation.GetSemanticModel(tree);
        }

        return model;
    }
#pragma warning restore RS1030

    private IOperation? FindInitialiser(ISymbol member)
    {
        foreach (var reference in member.DeclaringSyntaxReferences)
        {
            var clause = reference.GetSyntax(Cancellation) switch
            {
                VariableDeclaratorSyntax declarator => declarator.Initializer,
                PropertyDeclarationSyntax property => property.Initializer,
                _ => null,
            };
            if (clause is not null && Operation(clause) is ISymbolInitializerOperation operation)
            {
                return operation.Value;
            }
        }

        return null;
    }

    private IOperation? FindBody(IMethodSymbol method)
    {
        foreach (var reference in (method.PartialImplementationPart ?? method).DeclaringSyntaxReferences)
        {
            var operation = reference.GetSyntax(Cancellation) switch
            {
                // Property => expression; the accessor's declaration is the arrow.
                ArrowExpressionClauseSyntax arrow => Operation(arrow),
                AccessorDeclarationSyntax { Body: null, ExpressionBody: null } => null,
                LocalFunctionStatementSyntax or AnonymousFunctionExpressionSyntax => null,
                TypeDeclarationSyntax => null,
                var syntax => Operation(syntax),
            };
            switch (operation)
            {
                case IMethodBodyOperation body:
                    return body.BlockBody ?? body.ExpressionBody;
                case IConstructorBodyOperation or IBlockOperation:
                    return operation;
                case { } other:
                    return other;
            }
        }

        return null;
    }
}
