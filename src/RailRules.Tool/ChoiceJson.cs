using System.Text;
using System.Text.Json;
using RailRules.Analyzers.Choosing;
using RailRules.Choosing;
using RailRules.Review;

namespace RailRules.Tool;

/// <summary>What was found, for programs; docs/choosing.md describes it.</summary>
internal static class ChoiceJson
{
    /// <summary>Version of the form.</summary>
    public const int Version = 1;

    public static string Write(Chosen chosen, Applied? applied) => Text(json =>
    {
        var (choice, tables) = (chosen.Choice, chosen.Project.Choices.Tables);
        WriteUse(json, "place", chosen.Place);
        json.WriteStartArray("together");
        foreach (var one in chosen.Together)
        {
            WriteUse(json, null, one);
        }

        json.WriteEndArray();
        json.WriteNumber("tried", choice.Tried);
        json.WriteNumber("unread", tables.Unread);
        json.WriteStartArray("passing");
        foreach (var candidate in choice.Passing)
        {
            json.WriteStartObject();
            json.WriteString("part", candidate.Label);
            json.WriteString("table", chosen.Project.Choices.TablePartOf(candidate.Part).File);
            Number(json, "rating", candidate.Rating);
            Number(json, "dissipation", candidate.Dissipation);
            json.WriteNumber("alternates", candidate.Alternates);
            Margins(json, "undecided", candidate.Undecided);
            Margins(json, "margins", candidate.Margins);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("nearMisses");
        foreach (var miss in choice.NearMisses)
        {
            WriteMiss(json, null, miss);
        }

        json.WriteEndArray();
        if (choice.Window is { } window)
        {
            json.WriteStartObject("window");
            Number(json, "least", window.Least);
            Number(json, "most", window.Most);
            WriteMiss(json, "below", window.Below);
            WriteMiss(json, "above", window.Above);
            json.WriteEndObject();
        }

        if (choice.NoRoom is { } noRoom)
        {
            json.WriteStartObject("noRoom");
            json.WriteString("first", noRoom.First);
            json.WriteString("second", noRoom.Second);
            json.WriteString("because", noRoom.Message);
            json.WriteEndObject();
            json.WriteStartArray("smallestChanges");
            foreach (var change in choice.SmallestChanges())
            {
                json.WriteStartObject();
                json.WriteString("change", Camel(change.Kind.ToString()));
                Number(json, "factor", change.Factor);
                json.WriteString("part", change.Label);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteStartArray("failingAnyway");
        foreach (var check in choice.FailingAnyway)
        {
            json.WriteStartObject();
            json.WriteString("rule", check.Rule);
            json.WriteString("subject", check.Subject);
            json.WriteString("because", check.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (applied is not null)
        {
            json.WriteStartObject("applied");
            json.WriteString("part", applied.Part);
            json.WriteString("file", applied.File);
            json.WriteNumber("line", applied.Line);
            json.WriteString("before", applied.Before);
            json.WriteString("after", applied.After);
            json.WriteEndObject();
        }
    });

    public static string Write(SecondSource found) => Text(json =>
    {
        json.WriteString("part", found.Part);
        json.WriteStartArray("uses");
        foreach (var use in found.Uses)
        {
            WriteUse(json, null, use);
        }

        json.WriteEndArray();
        json.WriteStartArray("alternates");
        foreach (var one in found.Alternates)
        {
            json.WriteStartObject();
            json.WriteString("part", one.Part);
            json.WriteBoolean("named", one.IsNamed);
            json.WriteBoolean("holdsEverywhere", one.Fails.IsEmpty);
            json.WriteStartArray("holds");
            foreach (var holds in one.Holds)
            {
                json.WriteStartObject();
                json.WriteString("place", holds.Place.Name);
                Number(json, "margin", holds.Candidate?.SmallestMargin);
                json.WriteNumber("undecided", holds.Candidate?.Undecided.Length ?? 0);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("fails");
            foreach (var fails in one.Fails)
            {
                json.WriteStartObject();
                json.WriteString("place", fails.Place.Name);
                json.WriteString("rule", fails.Miss!.RuledOutBy[0].Rule);
                json.WriteString("because", fails.Miss.RuledOutBy[0].Message);
                Margins(json, "ruledOutBy", fails.Miss.RuledOutBy);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static string Text(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, ReviewJson.Options))
        {
            json.WriteStartObject();
            json.WriteNumber("version", Version);
            write(json);
            json.WriteStartArray("cautions");
            foreach (var caution in Texts.Cautions)
            {
                json.WriteStringValue(caution);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WriteUse(Utf8JsonWriter json, string? name, PlacedPart place)
    {
        Start(json, name);
        json.WriteString("name", place.Name);
        json.WriteString("board", place.Board.Board.ToDisplayString());
        json.WriteString("rail", place.Place.Rail.Name);
        json.WriteString("position", place.Position);
        json.WriteString("designator", place.Designator);
        json.WriteString("part", BoardChoices.Label(place.Place));
        json.WriteEndObject();
    }

    private static void WriteMiss(Utf8JsonWriter json, string? name, NearMiss? miss)
    {
        if (miss is null)
        {
            return;
        }

        Start(json, name);
        json.WriteString("part", miss.Label);
        json.WriteString("rule", miss.RuledOutBy[0].Rule);
        json.WriteString("because", miss.RuledOutBy[0].Message);
        Number(json, "rating", miss.Rating);
        Margins(json, "ruledOutBy", miss.RuledOutBy);
        json.WriteEndObject();
    }

    private static void Margins(Utf8JsonWriter json, string name, IEnumerable<PartMargin> margins)
    {
        json.WriteStartArray(name);
        foreach (var margin in margins)
        {
            json.WriteStartObject();
            json.WriteString("rule", margin.Rule);
            json.WriteString("subject", margin.Subject);
            Number(json, "margin", margin.Margin);
            Figure(json, "demand", margin.Demand);
            Figure(json, "capacity", margin.Capacity);
            json.WriteBoolean("ofThePart", margin.IsOwn);
            json.WriteString("message", margin.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Figure(Utf8JsonWriter json, string name, Figure? figure)
    {
        if (figure is { } value)
        {
            json.WriteStartObject(name);
            Number(json, "value", value.Value);
            json.WriteString("unit", value.Unit);
            json.WriteEndObject();
        }
    }

    /// <summary>A number with nine digits; what has no bound, and what is not stated, is null.</summary>
    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, ReviewJson.Nine(number));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Start(Utf8JsonWriter json, string? name)
    {
        if (name is null)
        {
            json.WriteStartObject();
        }
        else
        {
            json.WriteStartObject(name);
        }
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
