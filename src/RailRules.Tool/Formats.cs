using RailRules.Review;

namespace RailRules.Tool;

/// <summary>The files that can be written.</summary>
internal static class Formats
{
    public static readonly IReadOnlyDictionary<string, (string Extension, Func<BoardReview, Task<string>> Write)> All = new Dictionary<string, (string, Func<BoardReview, Task<string>>)>(StringComparer.Ordinal)
    {
        ["html"] = (".html", HtmlPage.WriteAsync),
        ["markdown"] = (".md", review => Task.FromResult(ReviewMarkdown.Write(review))),
        ["json"] = (".json", review => Task.FromResult(ReviewJson.Write(review))),
        ["sarif"] = (".sarif", review => Task.FromResult(ReviewSarif.Write(review))),
        ["csv"] = (".csv", review => Task.FromResult(ReviewCsv.Write(review))),
    };

    public static IEnumerable<string> Split(string list) => list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(name => name.ToLowerInvariant() switch { "md" => "markdown", var other => other });
}
