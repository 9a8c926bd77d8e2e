using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
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

        var boards = new CompilationBoards(context.Compilation, types, BoardSettings.Of(context.Options.AnalyzerConfigOptionsProvider.GlobalOptions));
        context.RegisterSymbolAction(symbol => Analyze(symbol, boards), SymbolKind.NamedType);
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
            context.ReportDiagnostic(Diagnostic.Create(Descriptors.Of(finding.Id), finding.Location, finding.Others, finding.Properties, finding.Message));
        }
    }
}

/// <summary>One finding: the rule's id, where it is shown, and the whole message.</summary>
internal sealed record Finding(string Id, Location Location, string Message)
{
    /// <summary>The key under which a finding of RAIL0015 or RAIL0910 names the rule that it is about.</summary>
    public const string Rule = "rule";

    public ImmutableArray<Location> Others { get; init; } = [];

    public ImmutableDictionary<string, string?> Properties { get; init; } = ImmutableDictionary<string, string?>.Empty;
}
