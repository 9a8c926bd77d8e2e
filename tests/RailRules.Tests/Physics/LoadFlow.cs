using System.Text.Json;

namespace RailRules.Tests.Physics;

/// <summary>The simulated operating points of tests/Reference/spice/loadflow.json (ngspice 39; see the README beside it).</summary>
internal static class LoadFlow
{
    private static readonly Lazy<Dictionary<string, JsonElement>> Cases = new(() =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "spice", "loadflow.json"))).RootElement
            .GetProperty("cases").EnumerateArray().ToDictionary(one => one.GetProperty("id").GetString()!));

    internal static IEnumerable<string> Ids => Cases.Value.Keys;

    internal static JsonElement Inputs(string id) => Cases.Value[id].GetProperty("inputs");

    internal static string Kind(string id) => Cases.Value[id].GetProperty("kind").GetString()!;

    internal static bool HasSolution(string id) => Cases.Value[id].GetProperty("outputs").EnumerateArray()
        .Where(one => one.GetProperty("quantity").GetString() == "has_solution").All(one => one.GetProperty("ngspice").GetBoolean());

    /// <summary>Compares a computed value with the simulator's, within the case's own tolerance.</summary>
    internal static void Check(string id, string signal, string quantity, double actual)
    {
        var output = Cases.Value[id].GetProperty("outputs").EnumerateArray()
            .Single(one => one.GetProperty("signal").GetString() == signal && one.GetProperty("quantity").GetString() == quantity);
        var expected = output.GetProperty("ngspice").GetDouble();
        Assert.True(Math.Abs(actual - expected) <= output.GetProperty("tolerance").GetDouble(), $"{id} {signal} {quantity}: {actual:R}, simulated {expected:R}");
    }

    internal static double Number(this JsonElement element, string name) => element.TryGetProperty(name, out var value) ? value.GetDouble() : 0;
}
