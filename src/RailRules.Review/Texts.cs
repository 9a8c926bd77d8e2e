using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules.Review;

/// <summary>Words that every review carries.</summary>
internal static class Texts
{
    internal static readonly ImmutableArray<string> Cautions =
    [
        "Results are a design aid. The values entered decide; a wrong datum gives a wrong verdict.",
        "That a check holds means that it holds with the data entered, in the corner named. It approves nothing.",
        "Local codes, product safety standards, the part maker's data and a licensed or competent engineer have the last word.",
        "High-current DC can kill, burn and start fires. Batteries and charged capacitors cannot be switched off at their terminals.",
        "Verify by test, at the worst corner, on the equipment as built.",
    ];

    internal static readonly ImmutableArray<string> OutOfScope =
    [
        "AC circuits, earth-fault protection of AC mains, and lightning protection of buildings.",
        "Electric shock and energy hazards as product safety standards judge them; clearances and creepage.",
        "Electromagnetic compatibility, signal integrity, and the control loops of converters.",
        "Mechanical strength, workmanship, corrosion and ageing, unless a datum of the part states it.",
        "What the source does not describe: parts, loads, sources and faults that are not written as rails of this board.",
    ];

    internal static readonly ImmutableArray<RuleDescription> Rules = [.. Registry.All.Select(rule => rule.Description).Where(rule => rule.Id != "RAIL0004")];

    private static readonly ImmutableDictionary<string, string> Titles = Registry.All.ToImmutableDictionary(rule => rule.Description.Id, rule => rule.Description.Title, StringComparer.Ordinal);

    /// <summary>A rule's title; for rules of the analyzer itself a word on what they are about.</summary>
    internal static string TitleOf(string id) => Titles.TryGetValue(id, out var title) ? title : id switch
    {
        "RAIL0001" => "A value that cannot be worked out from the source",
        "RAIL0002" => "Evaluation stopped at its budget",
        "RAIL0006" => "A parts-table line that cannot be read",
        "RAIL0009" => "A rail that no board reaches",
        "RAIL0010" => "Evaluated code throws",
        "RAIL0011" => "A static read before C# gives it a value",
        "RAIL0012" => "A board in a form that cannot work",
        "RAIL0013" => "A value of another assembly that is not carried",
        _ => "A rule of the team's own",
    };
}
