using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace RailRules.Review.Tests;

/// <summary>What a schema says of a text, by JsonSchema.Net.</summary>
internal static class Schemas
{
    /// <summary>docs/review.schema.json.</summary>
    public static JsonSchema Review { get; } = JsonSchema.FromText(Read("review.schema.json"));

    /// <summary>The SARIF 2.1.0 schema; see tests/Reference/README.md. It is written for draft 4, of which this library reads only the successors: its keywords mean the same there.</summary>
    public static JsonSchema Sarif { get; } = Later(Read("sarif-2.1.0-rtm.5.json"));

    public static void AssertValid(JsonSchema schema, string json)
    {
        var errors = Errors(schema, json);
        Assert.True(errors.Count == 0, string.Join("; ", errors));
    }

    public static IReadOnlyList<string> Errors(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        var result = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        return result.IsValid ? [] : [.. (result.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => detail.InstanceLocation + ": " + error.Value)).DefaultIfEmpty("invalid")];
    }

    private static JsonSchema Later(string draft4)
    {
        var schema = JsonNode.Parse(draft4)!.AsObject();
        schema["$schema"] = "http://json-schema.org/draft-07/schema#";
        schema.Remove("id");
        return JsonSchema.FromText(schema.ToJsonString());
    }

    private static string Read(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Schemas", name));
}
