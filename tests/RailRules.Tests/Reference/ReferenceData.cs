using System.Text.Json;

namespace RailRules.Tests.Reference;

/// <summary>Reads the cases of tests/Reference.</summary>
internal static class ReferenceData
{
    private static readonly Lazy<IReadOnlyDictionary<string, JsonElement>> Problems = new(() =>
        File.ReadLines(PathOf("cases-open.jsonl")).Where(line => line.Length > 0).Select(line => JsonDocument.Parse(line).RootElement)
            .ToDictionary(problem => problem.GetProperty("id").GetString()!));

    /// <summary>The cases by id.</summary>
    public static IReadOnlyDictionary<string, JsonElement> Cases => Problems.Value;

    /// <summary>The rules that decide each check word of the cases; a table without quotes.</summary>
    public static IReadOnlyDictionary<string, string[]> CaseMap { get; } = File.ReadLines(PathOf("case-map.csv")).Skip(1).Where(line => line.Length > 0)
        .Select(line => line.Split(','))
        .ToDictionary(cells => cells[0], cells => cells[1].Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static string PathOf(string file) => Path.Combine(AppContext.BaseDirectory, "Reference", file);
}
