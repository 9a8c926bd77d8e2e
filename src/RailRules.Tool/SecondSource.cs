using System.Collections.Immutable;
using RailRules.Analyzers.Choosing;
using RailRules.Choosing;

namespace RailRules.Tool;

/// <summary>Where a part is used, and which parts of the tables could be fitted in its stead.</summary>
/// <param name="Part">What people call the part.</param>
/// <param name="Uses">The places where it stands.</param>
/// <param name="Alternates">Parts of its kind and rating, and those that it names as alternates; those that hold everywhere first.</param>
internal sealed record SecondSource(string Part, ImmutableArray<PlacedPart> Uses, ImmutableArray<Alternate> Alternates)
{
    /// <summary>Looks for a part's second sources: each is judged in every place by itself, the others as they are.</summary>
    public static SecondSource Of(ImmutableArray<ProjectChoices> projects, string part)
    {
        var uses = projects.SelectMany(project => project.Choices.Places.Where(place => IsCalled(place, part)).Select(place => (project.Choices, Place: place))).ToList();
        if (uses.Count == 0)
        {
            var used = projects.SelectMany(project => project.Choices.Places).Select(place => BoardChoices.Label(place.Place)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
            throw new CannotRunException($"'{part}' stands nowhere on the boards", $"they use {string.Join(", ", used.Take(20))}{(used.Count > 20 ? ", ..." : "")}", "give the part number of a part in use");
        }

        var first = uses[0].Place.Part;
        var named = ((first as Element)?.Alternates ?? []).Where(one => one is not null).ToList();
        var tried = new Dictionary<string, (bool IsNamed, List<PlaceVerdict> Verdicts)>(StringComparer.Ordinal);
        foreach (var (choices, place) in uses)
        {
            var parts = choices.Tables.LikeIt(place.Part).Where(one => one.PartNumber != NumberOf(first)).Select(one => (one.Part, Label: one.PartNumber))
                .Where(one => PartSearch.RatingOf(one.Part) is { } rating && rating == PartSearch.RatingOf(first) || named.Any(other => other.PartNumber == one.Label))
                .Concat(named.Where(one => one.PartNumber is null || !choices.Tables.All.Any(table => table.PartNumber == one.PartNumber)).Select(one => ((object)one, one.PartNumber ?? one.Name ?? "alternate")))
                .ToList();
            var choice = choices.Choose([place], parts.Select(one => one.Item1), nearMisses: parts.Count);
            foreach (var (candidate, label) in parts)
            {
                if (!tried.TryGetValue(label, out var known))
                {
                    tried.Add(label, known = (named.Any(one => one.PartNumber == label || ReferenceEquals(one, candidate)), []));
                }

                known.Verdicts.Add(new PlaceVerdict(place, choice.Passing.FirstOrDefault(one => ReferenceEquals(one.Part, candidate)), choice.NearMisses.FirstOrDefault(one => ReferenceEquals(one.Part, candidate))));
            }
        }

        return new SecondSource(
            BoardChoices.Label(uses[0].Place.Place),
            [.. uses.Select(one => one.Place)],
            [
                .. tried.Select(one => new Alternate(one.Key, one.Value.IsNamed, [.. one.Value.Verdicts.Where(verdict => verdict.Miss is null).Select(verdict => verdict)], [.. one.Value.Verdicts.Where(verdict => verdict.Miss is not null)]))
                    .OrderBy(one => one.Fails.Length).ThenBy(one => one.Holds.Sum(verdict => verdict.Candidate?.Undecided.Length ?? 0)).ThenByDescending(one => one.SmallestMargin).ThenBy(one => one.Part, StringComparer.Ordinal),
            ]);
    }

    private static bool IsCalled(PlacedPart place, string part) => NumberOf(place.Part) == part || BoardChoices.Label(place.Place) == part;

    private static string? NumberOf(object part) => (part as Element)?.PartNumber ?? (part as TransientSuppressor)?.PartNumber;
}

/// <summary>A part that may be fitted instead.</summary>
/// <param name="Part">What people call it.</param>
/// <param name="IsNamed">Whether the part names it among its alternates.</param>
/// <param name="Holds">Where it passes.</param>
/// <param name="Fails">Where it fails.</param>
internal sealed record Alternate(string Part, bool IsNamed, ImmutableArray<PlaceVerdict> Holds, ImmutableArray<PlaceVerdict> Fails)
{
    /// <summary>The smallest margin where it passes.</summary>
    public double SmallestMargin => Holds.Select(verdict => verdict.Candidate?.SmallestMargin ?? double.PositiveInfinity).DefaultIfEmpty(0).Min();
}

/// <summary>What came of a part in a place.</summary>
internal sealed record PlaceVerdict(PlacedPart Place, Candidate? Candidate, NearMiss? Miss);
