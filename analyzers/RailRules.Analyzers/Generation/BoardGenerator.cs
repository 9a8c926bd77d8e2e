using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace RailRules.Analyzers.Generation;

/// <summary>
/// Gives each partial <c>[Board]</c> class its <c>Model</c> and <c>Review()</c>, with the rules of the team's own. It reports nothing: <see cref="BoardAnalyzer"/> does, since editors show what
/// analyzers say.
/// </summary>
[Generator(LanguageNames.CSharp)]
public sealed class BoardGenerator : IIncrementalGenerator
{
    /// <summary>Names of the steps, as the driver tracks them.</summary>
    internal static class Steps
    {
        public const string Boards = "Boards";
        public const string Rules = "DesignRules";
        public const string Carried = "CarriedDesignRules";
        public const string AllRules = "AllDesignRules";
    }

    /// <inheritdoc/>
    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var boards = context.SyntaxProvider.ForAttributeWithMetadataName("RailRules.BoardAttribute", static (node, _) => node is TypeDeclarationSyntax, static (found, cancellation) => Board(found, cancellation))
            .WithTrackingName(Steps.Boards).Where(static board => board is not null);
        var rules = context.SyntaxProvider.ForAttributeWithMetadataName(TeamRules.Attribute, static (node, _) => node is MethodDeclarationSyntax, static (found, cancellation) => Rule(found, cancellation))
            .WithTrackingName(Steps.Rules).Where(static rule => rule is not null);
        var carried = context.CompilationProvider.Select(static (compilation, _) => Carried(compilation)).WithTrackingName(Steps.Carried);
        var all = rules.Collect().Combine(carried).Select(static (pair, _) => All(pair.Left!, pair.Right)).WithTrackingName(Steps.AllRules);
        context.RegisterSourceOutput(boards.Combine(all), static (output, pair) => output.AddSource(pair.Left!.Hint, SourceText.From(pair.Left.Head + BoardSource.Rules(pair.Right) + pair.Left.Tail, Encoding.UTF8)));
        context.RegisterSourceOutput(rules.Collect().Select(static (found, _) => All(found!, default)), static (output, found) =>
        {
            if (BoardSource.OwnRules(found) is { } text)
            {
                output.AddSource("DesignRules.g.cs", SourceText.From(text, Encoding.UTF8));
            }
        });
    }

    private static BoardText? Board(GeneratorAttributeSyntaxContext found, CancellationToken cancellation)
    {
        // A class of several parts is found once for each attribute on it.
        var board = (INamedTypeSymbol)found.TargetSymbol;
        if (BoardForm.WhyNoModel(board) is not null || KnownTypes.TryCreate(found.SemanticModel.Compilation) is not { } types || types.BoardAround(board) is not { } outermost
            || !SymbolEqualityComparer.Default.Equals(outermost, board)
            || board.GetAttributes().First(attribute => attribute.AttributeClass?.ToDisplayString() == "RailRules.BoardAttribute").ApplicationSyntaxReference is not { } first
            || first.SyntaxTree != found.TargetNode.SyntaxTree || !found.TargetNode.Span.Contains(first.Span))
        {
            return null;
        }

        return BoardSource.Of(board, types, found.SemanticModel.Compilation, cancellation);
    }

    private static RuleText? Rule(GeneratorAttributeSyntaxContext found, CancellationToken cancellation)
    {
        var method = (IMethodSymbol)found.TargetSymbol;
        return TeamRules.FaultOf(method, found.Attributes[0]) is null ? BoardSource.Of(TeamRules.Read(method, found.Attributes[0], cancellation), isOwn: true) : null;
    }

    private static EquatableArray<RuleText> Carried(Compilation compilation) => new([.. TeamRules.OfReferences(compilation).Select(rule => BoardSource.Of(rule, isOwn: false))]);

    /// <summary>In order of id; of several with one id the first, the team's own before those of references. The analyzer says which clash.</summary>
    private static EquatableArray<RuleText> All(ImmutableArray<RuleText> own, EquatableArray<RuleText> carried) =>
        new([.. own.OrderBy(rule => rule.Call, StringComparer.Ordinal).Concat(carried).GroupBy(rule => rule.Id, StringComparer.OrdinalIgnoreCase).Select(group => group.First()).OrderBy(rule => rule.Id, StringComparer.Ordinal)]);
}

/// <summary>The code of a board before and after the place where its rules stand.</summary>
internal sealed record BoardText(string Hint, string Head, string Tail);

/// <summary>A rule as the generated code writes it.</summary>
/// <param name="Id">The team's id.</param>
/// <param name="Made">The expression that makes it.</param>
/// <param name="Call">What identifies it, for a settled order.</param>
/// <param name="Part">The part of its class that makes it, where it is private; else empty.</param>
/// <param name="Export">The attribute that tells other assemblies of it; empty where it is not public.</param>
internal sealed record RuleText(string Id, string Made, string Call, string Part, string Export);
