using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace RailRules.Review;

/// <content>Checks put together: a shelf of equal sleds is read once.</content>
public sealed partial class BoardReview
{
    private void ReadGroups()
    {
        Groups =
        [
            .. Checks.GroupBy(check => Signature(check, false), StringComparer.Ordinal)
                .Select((group, index) => new CheckGroup([.. group], index))
                .OrderBy(group => group.First.Outcome switch { Outcome.Fails => 0, Outcome.Undecided => 1, Outcome.Waived => 2, Outcome.Suggestion => 3, _ => 4 })
                .ThenBy(group => group.First.Check.Margin ?? (group.First.Outcome == Outcome.Holds ? double.PositiveInfinity : -1))
                .ThenBy(group => group.Index),
        ];
    }

    private void ReadWorksheets()
    {
        var sheets = new List<(string Title, List<ReviewedCheck> Checks)>();
        var at = new Dictionary<(object?, object?, DatumPlace), int>();
        foreach (var check in Checks)
        {
            // One thing in one place: the part, and where it stands.
            var stands = check.Check.Places.FirstOrDefault(place => place.Index is not null);
            var key = (check.Check.Rail, check.Check.Part ?? check.Thing, stands);
            if (!at.TryGetValue(key, out var index))
            {
                at.Add(key, index = sheets.Count);
                sheets.Add((check.Thing, []));
            }

            sheets[index].Checks.Add(check);
        }

        Worksheets =
        [
            .. sheets.GroupBy(sheet => string.Concat(sheet.Checks.Select(check => Signature(check, true))), StringComparer.Ordinal)
                .Select(group => new Worksheet(
                    [.. group.Select(sheet => sheet.Checks[0])],
                    [.. group.First().Checks],
                    [.. group.SelectMany(sheet => sheet.Checks)],
                    KindOf(group.First().Checks[0].Check.Part)))
                .OrderBy(sheet => sheet.Checks.Min(check => check.Outcome))
                .ThenBy(sheet => sheet.Checks.Min(check => check.Check.Margin ?? double.PositiveInfinity)),
        ];
    }

    internal static string KindOf(object? part) => part switch
    {
        Element element => Network.Kind(element),
        TransientSuppressor => "clamp",
        Capacitor => "capacitor",
        Load => "load",
        Rail => "rail",
        Supply => "supply",
        Battery => "battery",
        Converter => "converter",
        _ => "",
    };

    /// <summary>All that a reader sees of a check but its rail and designator: checks with one signature are told once.</summary>
    private string Signature(ReviewedCheck one, bool deep)
    {
        var check = one.Check;
        var text = new StringBuilder();
        Add(text, check.Rule, one.Outcome.ToString(), one.Datum, KindOf(check.Part), PartName(one), check.Corner, check.Basis, Exact(check.Margin));
        Add(text, Exact(check.Demand?.Value), check.Demand?.Unit, Exact(check.Capacity?.Value), check.Capacity?.Unit);
        if (check.Rail is null || check.Verdict != RailRules.Verdict.Holds)
        {
            // What is open is told in words, which name the rail: only the rail's own name may differ.
            Add(text, one.Rail.Length > 0 ? one.Said.Replace("'" + one.Rail + "'", "'…'", StringComparison.Ordinal) : one.Said);
        }

        foreach (var missing in check.Missing)
        {
            Add(text, missing.Place.Datum, missing.Of == one.Rail ? "…" : missing.Of);
        }

        if (deep)
        {
            foreach (var step in check.Working)
            {
                Add(text, step.Quantity, step.Formula, step.Numbers, Exact(step.Result.Value), step.Result.Unit, step.Source, Written(step.Place)?.ToString());
            }

            foreach (var assumption in check.Assumptions)
            {
                Add(text, assumption);
            }
        }

        return text.ToString();
    }

    /// <summary>'Reed20' of "'Reed20' on rail 'Sled 1'".</summary>
    private static string PartName(ReviewedCheck check)
    {
        var at = check.Rail.Length == 0 ? -1 : check.Thing.LastIndexOf(" on rail '" + check.Rail + "'", StringComparison.Ordinal);
        return at >= 0 ? check.Thing[..at] : check.Thing == "rail '" + check.Rail + "'" || check.Thing == "'" + check.Rail + "'" ? "rail" : check.Thing;
    }

    private static void Add(StringBuilder text, params ReadOnlySpan<string?> parts)
    {
        foreach (var part in parts)
        {
            text.Append(part).Append('\u0001');
        }
    }

    private static string Exact(double? value) => value?.ToString("G9", CultureInfo.InvariantCulture) ?? "";
}

/// <summary>Checks that differ in nothing but rail and designator.</summary>
/// <param name="Checks">The checks, in the board's order.</param>
/// <param name="Index">Its place in the board's order.</param>
public sealed record CheckGroup(ImmutableArray<ReviewedCheck> Checks, int Index)
{
    /// <summary>The first of them.</summary>
    public ReviewedCheck First => Checks[0];
}

/// <summary>The working of all that is checked of one thing; things that differ in nothing but rail and designator share it.</summary>
/// <param name="Places">The first check of each thing: where it stands.</param>
/// <param name="Checks">The checks of the first thing.</param>
/// <param name="All">The checks of all of them.</param>
/// <param name="Kind">What kind of thing it is.</param>
public sealed record Worksheet(ImmutableArray<ReviewedCheck> Places, ImmutableArray<ReviewedCheck> Checks, ImmutableArray<ReviewedCheck> All, string Kind);
