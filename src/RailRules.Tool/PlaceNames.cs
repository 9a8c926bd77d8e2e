using System.Collections.Immutable;
using RailRules.Analyzers.Choosing;

namespace RailRules.Tool;

/// <summary>From what the user calls a place to the place.</summary>
internal static class PlaceNames
{
    private const int Nearest = 3;

    /// <summary>The one place that a designator, or BOARD.RAIL.Path[0], names; board or namespace may be left out where one place remains.</summary>
    public static (ProjectChoices Project, PlacedPart Place) Find(ImmutableArray<ProjectChoices> projects, string asked)
    {
        var all = projects.SelectMany(project => project.Choices.Places.Select(place => (Project: project, Place: place))).ToList();
        var found = all.Where(one => NamesOf(one.Place).Contains(asked, StringComparer.Ordinal)).ToList();
        if (found.Count == 0)
        {
            found = [.. all.Where(one => NamesOf(one.Place).Contains(asked, StringComparer.OrdinalIgnoreCase))];
        }

        if (found.Count == 1)
        {
            return found[0];
        }

        if (found.Count > 1)
        {
            var names = found.Select(one => Told(one.Place)).Distinct().ToList();
            throw new CannotRunException($"'{asked}' names several places", string.Join(", ", names), names.Count == 1 ? "name the project with the board that is meant" : $"name one of them, for example --at \"{names[0]}\"");
        }

        var near = all.SelectMany(one => NamesOf(one.Place).Select(name => (Name: name, one.Place)))
            .OrderBy(one => Distance(one.Name.ToUpperInvariant(), asked.ToUpperInvariant())).ThenBy(one => one.Name.Length).ThenBy(one => one.Name, StringComparer.Ordinal)
            .DistinctBy(one => one.Place).Take(Nearest).Select(one => one.Name == one.Place.Designator ? $"{one.Name} ({one.Place.Name})" : one.Name).ToList();
        throw new CannotRunException($"There is no place '{asked}'", (near.Count > 0 ? "the nearest names are " + string.Join(", ", near) : "the boards have no parts") + FirstError(projects), "give a designator, or a place as BOARD.RAIL.Path[0]");
    }

    /// <summary>That the source does not compile, and why: then rails and parts may be missing for that reason.</summary>
    private static string FirstError(ImmutableArray<ProjectChoices> projects) =>
        projects.SelectMany(project => project.Project.Compilation.GetDiagnostics()).FirstOrDefault(diagnostic => diagnostic.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error) is { } error
            ? $"; the source does not compile: {error.Id} {error.GetMessage(System.Globalization.CultureInfo.InvariantCulture)}"
            : "";

    /// <summary>All names of a place, the shortest that may be unique first.</summary>
    private static IEnumerable<string> NamesOf(PlacedPart place)
    {
        if (place.Designator is { } designator)
        {
            yield return designator;
            yield return place.Board.Board.Name + "." + designator;
            yield return place.Board.Board.ToDisplayString() + "." + designator;
        }

        yield return place.Name;
        yield return $"{place.Place.Rail.Name}.{place.Position}";
        yield return Told(place);
    }

    private static string Told(PlacedPart place) => $"{place.Board.Board.ToDisplayString()}.{place.Place.Rail.Name}.{place.Position}";

    /// <summary>How many letters must be put in, taken out or changed (Levenshtein 1966).</summary>
    private static int Distance(string one, string other)
    {
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var k = 1; k <= other.Length; k++)
            {
                (diagonal, row[k]) = (row[k], Math.Min(Math.Min(row[k], row[k - 1]) + 1, diagonal + (one[i - 1] == other[k - 1] ? 0 : 1)));
            }
        }

        return row[^1];
    }
}
