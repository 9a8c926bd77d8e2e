using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules;

/// <summary>Applies every rule to a board's rails. Analyzer, review, unit tests and fixes all come through here.</summary>
public static class Engine
{
    /// <summary>Every check of the rails and of what feeds them, with its working, in order of rail and rule.</summary>
    /// <param name="rails">The board's rails.</param>
    public static ImmutableArray<Check> Check(IEnumerable<Rail> rails) => Check(rails, null);

    /// <summary>Every check of the rails and of what feeds them.</summary>
    /// <param name="rails">The board's rails.</param>
    /// <param name="isUnknown">Whether a datum (owner, property) was written but could not be worked out; what depends on it is undecided.</param>
    public static ImmutableArray<Check> Check(IEnumerable<Rail> rails, Func<object, string, bool>? isUnknown)
    {
        var network = new Network(rails, isUnknown);
        return [.. Registry.All.SelectMany(rule => rule.Apply(network))];
    }
}
