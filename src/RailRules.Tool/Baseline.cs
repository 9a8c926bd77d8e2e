using System.Globalization;
using System.Text;
using System.Text.Json;
using RailRules.Review;

namespace RailRules.Tool;

/// <summary>Earlier reviews, as JSON, to compare with.</summary>
internal sealed class Baseline
{
    private readonly Dictionary<string, Dictionary<string, Entry>> boards = new(StringComparer.Ordinal);

    /// <summary>Reads one JSON review, or all of a folder.</summary>
    public static Baseline Read(string path)
    {
        var result = new Baseline();
        var files = Directory.Exists(path) ? Directory.GetFiles(path, "*.json") : [path];
        foreach (var file in files)
        {
            try
            {
                using var json = JsonDocument.Parse(File.ReadAllBytes(file));
                result.Add(json.RootElement);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
            {
                throw new CannotRunException($"The baseline '{file}' cannot be read", exception.Message, "give a JSON file that 'railrules review --format json' wrote, or a folder of them");
            }
        }

        return result.boards.Count > 0 ? result : throw new CannotRunException($"The baseline '{path}' has no review", "no JSON file lies there", "give a JSON file that 'railrules review --format json' wrote, or a folder of them");
    }

    private void Add(JsonElement root)
    {
        if (root.GetProperty("version").GetInt32() > ReviewJson.Version)
        {
            throw new FormatException("it was written by a newer version");
        }

        var checks = new Dictionary<string, Entry>(StringComparer.Ordinal);
        foreach (var check in root.GetProperty("checks").EnumerateArray())
        {
            var unlimited = check.TryGetProperty("margin", out var margin) && margin.ValueKind == JsonValueKind.Null;
            checks[check.GetProperty("key").GetString()!] = new Entry(
                check.GetProperty("verdict").GetString()!,
                unlimited ? double.PositiveInfinity : margin.ValueKind == JsonValueKind.Number ? margin.GetDouble() : null,
                check.GetProperty("subject").GetString()!);
        }

        boards[root.GetProperty("board").GetProperty("fullName").GetString()!] = checks;
    }

    /// <summary>What moved on a board since.</summary>
    public BoardChanges Compare(BoardReview review)
    {
        if (!boards.TryGetValue(review.Input.FullName, out var before))
        {
            return new BoardChanges(review.Input.FullName, false, [], [.. review.Checks.Select(check => check.Key)], []);
        }

        var moved = new List<Moved>();
        var added = new List<string>();
        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (var check in review.Checks)
        {
            if (!before.TryGetValue(check.Key, out var was))
            {
                added.Add(check.Key);
                continue;
            }

            met.Add(check.Key);
            var now = new Entry(ReviewJson.Word(check.Outcome), check.Check.Margin is { } margin && double.IsFinite(margin) ? ReviewJson.Nine(margin) : check.Check.Margin, check.Check.Subject);
            if (was.Verdict != now.Verdict || was.Margin != now.Margin)
            {
                moved.Add(new Moved(check.Key, was.Verdict, was.Margin, now.Verdict, now.Margin, was.Subject == now.Subject ? null : $"{was.Subject} became {now.Subject}"));
            }
        }

        return new BoardChanges(review.Input.FullName, true, [.. moved.OrderByDescending(one => one.Loss).ThenBy(one => one.Key, StringComparer.Ordinal)], added, [.. before.Keys.Where(key => !met.Contains(key))]);
    }

    private sealed record Entry(string Verdict, double? Margin, string Subject);
}

/// <summary>A check whose margin or verdict moved.</summary>
internal sealed record Moved(string Key, string WasVerdict, double? Was, string NowVerdict, double? Now, string? Replaced)
{
    /// <summary>The share of its margin that is lost; all of it where there is none any more; negative: gained.</summary>
    public double Loss => (Was, Now) switch
    {
        (null, _) => WasVerdict == "holds" && NowVerdict != "holds" ? 1 : 0,
        (_, null) => 1,
        ({ } was, { } now) when double.IsInfinity(was) => double.IsInfinity(now) ? 0 : 1,
        ({ } was, { } now) => double.IsInfinity(now) ? -1 : was == 0 ? 0 : (was - now) / was,
    };

    public string Change => Was is { } was && Now is { } now && double.IsFinite(was) && double.IsFinite(now) && was != 0
        ? (now >= was ? "+" : "−") + Figures.Text(Math.Abs(now - was) / was * 100, "%")
        : "";

    public override string ToString() => $"{Key}: {Told(WasVerdict, Was)} → {Told(NowVerdict, Now)} {Change}".TrimEnd();

    private static string Told(string verdict, double? margin) => margin is null ? verdict : $"{verdict} {Shown.Margin(margin)}";
}

/// <summary>What moved on a board since its baseline.</summary>
internal sealed record BoardChanges(string Board, bool IsKnown, IReadOnlyList<Moved> Moved, IReadOnlyList<string> New, IReadOnlyList<string> Gone)
{
    public string Summary => IsKnown ? $"{Shown.Count(Moved.Count, "check")} moved, {New.Count.ToString(CultureInfo.InvariantCulture)} new, {Gone.Count.ToString(CultureInfo.InvariantCulture)} gone" : "the baseline does not know this board";

    /// <summary>The checks that lost more than a share of their margin.</summary>
    public IEnumerable<Moved> Lost(double share) => Moved.Where(one => one.Loss > share);

    public string ToMarkdown(double? most)
    {
        var text = new StringBuilder();
        text.Append("# Margins of ").Append(ReviewMarkdown.Cell(Board)).Append(" against the baseline\n\n").Append(Summary).Append(".\n");
        if (Moved.Count > 0)
        {
            text.Append("\n| check | was | is | change | part |\n|---|--:|--:|--:|---|\n");
            foreach (var one in Moved)
            {
                text.Append("| ").Append(ReviewMarkdown.Cell(one.Key)).Append(most is { } share && one.Loss > share ? " **lost too much**" : "").Append(" | ").Append(one.WasVerdict).Append(' ').Append(Shown.Margin(one.Was)).Append(" | ").Append(one.NowVerdict).Append(' ').Append(Shown.Margin(one.Now)).Append(" | ").Append(one.Change).Append(" | ").Append(ReviewMarkdown.Cell(one.Replaced)).Append(" |\n");
            }
        }

        List(text, "New checks", New);
        List(text, "Checks that are gone", Gone);
        return text.ToString();
    }

    private static void List(StringBuilder text, string title, IReadOnlyList<string> keys)
    {
        if (keys.Count > 0)
        {
            text.Append("\n## ").Append(title).Append("\n\n");
            foreach (var key in keys)
            {
                text.Append("- ").Append(ReviewMarkdown.Cell(key)).Append('\n');
            }
        }
    }
}
