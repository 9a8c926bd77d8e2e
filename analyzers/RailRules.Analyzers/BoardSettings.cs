using System.Globalization;
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
