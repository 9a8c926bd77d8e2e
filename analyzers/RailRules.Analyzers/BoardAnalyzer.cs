using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>
/// Checks the boards of a compilation. Every finding is reported from the symbol action of the type in which it is shown, so that editors, which ask
/// document by document, show it while the user types; what other types know is pulled, never collected.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class BoardAnalyzer : DiagnosticAnalyzer
{
    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics => Descriptors.All;

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.EnableConcurrentExecution();
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.Analyze | GeneratedCodeAnalysisFlags.ReportDiagnostics);
        context.RegisterCompilationStartAction(Start);
    }

    private static void Start(CompilationStartAnalysisContext context)
    {
        if (KnownTypes.TryCreate(context.Compilation) is not { } types)
        {
            return;
        }

        var boards = new CompilationBoards(context.Compilation, types, BoardSettings.Of(context.Options.AnalyzerConfigOptionsProvider.GlobalOptions) with { Files = context.Options.AnalyzerConfigOptionsProvider.GetOptions });
        context.RegisterSymbolAction(symbol => Analyze(symbol, boards), SymbolKind.NamedType);
        context.RegisterSyntaxNodeAction(node => AnalyzeUse(node, types), SyntaxKind.SimpleMemberAccessExpression);
        context.RegisterSyntaxNodeAction(AnalyzeLocal, SyntaxKind.LocalFunctionStatement);
    }

    private static void Analyze(SymbolAnalysisContext context, CompilationBoards boards)
    {
        var type = (INamedTypeSymbol)context.Symbol;
        ImmutableArray<Finding> findings;
        try
        {
            findings = boards.FindingsOf(type, context.CancellationToken);
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            // A board that could not be judged must not look judged, and the compiler must not lose the analyzer.
            findings = [new Finding(FoundationRules.NotComputable.Id, Places.Declaration(type, context.CancellationToken), $"'{type.Name}' could not be checked: internal error {exception.GetType().Name}: {exception.Message}")];
        }

        foreach (var finding in findings)
        {
            context.ReportDiagnostic(finding.Severity is { } severity
                ? Diagnostic.Create(Descriptors.Of(finding.Id), finding.Location, severity, finding.Others, finding.Properties, finding.Message)
                : Diagnostic.Create(Descriptors.Of(finding.Id), finding.Location, finding.Others, finding.Properties, finding.Message));
        }
    }

    /// <summary>The compiler says that a board has no Model; here is why.</summary>
    private static void AnalyzeUse(SyntaxNodeAnalysisContext context, KnownTypes types)
    {
        var access = (MemberAccessExpressionSyntax)context.Node;
        if (access.Name.Identifier.ValueText is BoardForm.Model or BoardForm.Review
            && context.SemanticModel.GetSymbolInfo(access.Expression, context.CancellationToken).Symbol is INamedTypeSymbol type && types.IsBoard(type)
            && type.GetMembers(access.Name.Identifier.ValueText).IsEmpty && BoardForm.WhyNoModel(type) is { } reason)
        {
            context.ReportDiagnostic(Diagnostic.Create(Descriptors.Of(FoundationRules.BadForm.Id), access.Name.GetLocation(), $"board '{type.Name}' is given no Model and no Review(): {reason}"));
        }
    }

    private static void AnalyzeLocal(SyntaxNodeAnalysisContext context)
    {
        var function = (LocalFunctionStatementSyntax)context.Node;
        if (function.AttributeLists.Count > 0 && context.SemanticModel.GetDeclaredSymbol(function, context.CancellationToken) is { } method && method.GetAttributes().Any(TeamRules.IsRule))
        {
            context.ReportDiagnostic(Diagnostic.Create(Descriptors.Of(FoundationRules.BadForm.Id), function.Identifier.GetLocation(), $"design rule '{method.Name}' cannot work: it is a function inside a method, which nothing else can call; make it a method of its class"));
        }
    }
}

/// <summary>One finding: the rule's id, where it is shown, and the whole message.</summary>
internal sealed record Finding(string Id, Location Location, string Message)
{
    /// <summary>The key under which a finding of RAIL0015 or RAIL0910 names the rule that it is about.</summary>
    public const string Rule = "rule";

    public ImmutableArray<Location> Others { get; init; } = [];

    /// <summary>Its own severity, where that is not its rule's.</summary>
    public DiagnosticSeverity? Severity { get; init; }

    public ImmutableDictionary<string, string?> Properties { get; init; } = ImmutableDictionary<string, string?>.Empty;
}
