using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Rules;

namespace RailRules.Analyzers;

/// <summary>The compiler's descriptors, made from each rule's one description.</summary>
internal static class Descriptors
{
    /// <summary>Where the pages of help lie; a page a rule.</summary>
    public const string HelpBase = "https://github.com/railrules/railrules/blob/main/docs/rules/";

    private static readonly ImmutableDictionary<string, DiagnosticDescriptor> ById =
        FoundationRules.All.Where(rule => rule != FoundationRules.Unchecked)
            .Concat(Registry.All.Select(rule => rule.Description))
            .ToImmutableDictionary(rule => rule.Id, Make);

    public static ImmutableArray<DiagnosticDescriptor> All { get; } = [.. ById.Values.OrderBy(descriptor => descriptor.Id, StringComparer.Ordinal)];

    public static DiagnosticDescriptor Of(string id) => ById[id];

    public static bool TryGet(string id, out DiagnosticDescriptor descriptor) => ById.TryGetValue(id, out descriptor!);

    private static DiagnosticDescriptor Make(RuleDescription rule) => new(
        rule.Id,
        rule.Title,
        "{0}",
        "RailRules." + rule.Family,
        rule.Severity switch
        {
            RuleSeverity.Error => DiagnosticSeverity.Error,
            RuleSeverity.Warning or RuleSeverity.Off => DiagnosticSeverity.Warning,
            _ => DiagnosticSeverity.Info,
        },
        isEnabledByDefault: rule.Severity != RuleSeverity.Off,
        description: rule.Summary,
        helpLinkUri: HelpBase + rule.Id + ".md");
}
