using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>What the build says about judging boards.</summary>
internal sealed record BoardSettings
{
    /// <summary>The build property that says on which day waivers are judged; without it the same source gives the same findings for ever.</summary>
    public const string TodayProperty = "RailRulesToday";

    public EvaluationLimits Limits { get; init; } = new();

    /// <summary>The day on which waivers are judged; null: whether one is past its date is not judged.</summary>
    public DateTime? Today { get; init; }

    /// <summary>What the build says in place of a date.</summary>
    public string? UnreadToday { get; init; }

    /// <summary>The settings of a file; null: none are known.</summary>
    public Func<SyntaxTree, AnalyzerConfigOptions>? Files { get; init; }

    /// <summary>How a finding of a team's rule in a file is shown; null: as the rule says.</summary>
    public FindingSeverity? SeverityOf(string rule, SyntaxTree? tree) => Written(rule, tree) is { } text ? Read(text) : null;

    /// <summary>What the settings say in place of a severity; null where they say none or one that is.</summary>
    public string? UnreadSeverity(string rule, SyntaxTree? tree) => Written(rule, tree) is { } text && text != "default" && Read(text) is null ? text : null;

    private string? Written(string rule, SyntaxTree? tree) =>
        tree is not null && Files?.Invoke(tree) is { } options && options.TryGetValue($"railrules.{rule}.severity", out var text) && !string.IsNullOrWhiteSpace(text) ? text.Trim() : null;

    private static FindingSeverity? Read(string text) => text.ToLowerInvariant() switch
    {
        "none" or "silent" or "off" => FindingSeverity.Off,
        "suggestion" or "information" or "info" => FindingSeverity.Information,
        "warning" => FindingSeverity.Warning,
        "error" => FindingSeverity.Error,
        _ => null,
    };

    public static BoardSettings Of(AnalyzerConfigOptions options)
    {
        if (!options.TryGetValue("build_property." + TodayProperty, out var text) || string.IsNullOrWhiteSpace(text))
        {
            return new BoardSettings();
        }

        return DateTime.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var today)
            ? new BoardSettings { Today = today }
            : new BoardSettings { UnreadToday = text };
    }
}
