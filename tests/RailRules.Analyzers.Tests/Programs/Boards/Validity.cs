using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Validity;

/// <summary>Simple checks of one's own before a rail is made.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Faults = [.. Check("F1", 10, 8).Concat(Check("", 5, 6)).Concat(Check("F3", 3, 3))];
    public static readonly bool Fine = !Check("F1", 10, 8).Any();

    private static IEnumerable<string> Check(string designator, double rated, double load)
    {
        if (designator is not ['F', .. { Length: > 0 }])
            yield return $"'{designator}' is no designator";
        if (load > rated)
            yield return $"{designator}: {load} above {rated}";
        else if (load == rated)
            yield return $"{designator}: no margin";
    }
}
