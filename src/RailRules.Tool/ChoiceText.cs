using System.Globalization;
using RailRules.Choosing;
using RailRules.Review;
using Spectre.Console;

namespace RailRules.Tool;

/// <summary>What was found, for people.</summary>
internal static class ChoiceText
{
    private const string Caution = "A design aid, not an approval: the values entered decide. Verify by test.";

    /// <summary>What kind of part it is, in lower case.</summary>
    public static string Kind(object part) => part is Element element ? Network.Kind(element) : "clamp";

    public static void Write(TextWriter output, Chosen chosen, int most)
    {
        var console = Terminal.ConsoleOf(output);
        var (choice, place) = (chosen.Choice, chosen.Place);
        var kind = Kind(place.Part);
        console.MarkupLine($"[bold]{Text(place.Name)}[/]{(place.Designator is { } designator ? $" ({Text(designator)})" : "")}, now {Text(Analyzers.Choosing.BoardChoices.Label(place.Place))}: {choice.Passing.Length} of {Shown.Count(choice.Tried, kind)} {(choice.Passing.Length == 1 ? "passes" : "pass")}");
        if (chosen.Together.Length > 1)
        {
            console.MarkupLine(Text($"One expression fills {Shown.Count(chosen.Together.Length, "place")}, which are chosen together: {string.Join(", ", chosen.Together.Select(one => one.Designator ?? one.Name))}", 1000));
        }

        if (chosen.Project.Choices.Tables.Unread > 0)
        {
            console.MarkupLine(Text($"{Shown.Count(chosen.Project.Choices.Tables.Unread, "part")} of the tables left out: data that cannot be read (RAIL0006)"));
        }

        WritePassing(console, choice, place.Part, most);
        WriteMisses(console, choice);
        WriteWindow(console, choice, place.Part);
        foreach (var check in choice.FailingAnyway.Take(10))
        {
            console.MarkupLine(Text($"Fails whatever stands there: {check.Rule} {check.Message}", 400));
        }

        console.MarkupLineInterpolated($"{Caution}");
    }

    public static void Write(TextWriter output, SecondSource found)
    {
        var console = Terminal.ConsoleOf(output);
        console.MarkupLine($"[bold]{Text(found.Part)}[/] stands in {Shown.Count(found.Uses.Length, "place")}: {Text(string.Join(", ", found.Uses.Select(Short)), 1000)}");
        if (found.Alternates.IsEmpty)
        {
            console.MarkupLine("The tables have no other part of its kind and rating, and it names no alternate.");
        }

        var table = Table(("part", false), ("named", false), ("holds in", true), ("margin", true), ("undecided", true), ("fails in", false), ("rule", false), ("because", false));
        foreach (var one in found.Alternates)
        {
            table.AddRow(Text(one.Part), one.IsNamed ? "alternate" : "", $"{one.Holds.Length} of {found.Uses.Length}", Shown.Margin(one.Holds.IsEmpty ? null : one.SmallestMargin), Count(one.Holds.Sum(verdict => verdict.Candidate?.Undecided.Length ?? 0)), "", "", "");
            foreach (var fails in one.Fails)
            {
                var first = fails.Miss!.RuledOutBy[0];
                table.AddRow("", "", "", Shown.Margin(first.Margin), "", Text(Short(fails.Place)), Text(first.Rule), Text(first.Message, 300));
            }
        }

        if (table.Rows.Count > 0)
        {
            console.Write(table);
        }

        console.MarkupLine("Judged by the data in the tables; that it fits the same pads, clips or holder is for you to compare.");
        console.MarkupLineInterpolated($"{Caution}");

        static string Short(Analyzers.Choosing.PlacedPart place) => place.Designator ?? place.Name;
    }

    /// <summary>A rating with the unit of its kind.</summary>
    public static string Rating(double? rating, object part) => rating is { } value ? Figures.Text(value, part is TransientSuppressor ? "V" : "A") : "";

    private static void WritePassing(IAnsiConsole console, PartChoice choice, object part, int most)
    {
        if (choice.Passing.IsEmpty)
        {
            console.MarkupLine(choice.NoRoom is { } noRoom ? Text("Nothing passes: " + noRoom.Message, 1000) : "Nothing passes.");
            foreach (var change in choice.SmallestChanges())
            {
                console.MarkupLine(Text("What would open a window: " + change.Message, 400));
            }

            return;
        }

        var table = Table(("#", true), ("part", false), ("rating", true), ("margin", true), ("thinnest", false), ("heat", true), ("undecided", true), ("alternates", true));
        foreach (var (candidate, number) in choice.Passing.Take(most).Select((candidate, index) => (candidate, index + 1)))
        {
            var thinnest = candidate.Margins.FirstOrDefault(margin => margin.Margin is not null);
            table.AddRow(
                Count(number),
                Text(candidate.Label),
                Rating(candidate.Rating, part),
                Shown.Margin(candidate.SmallestMargin),
                thinnest is null ? "" : Text($"{thinnest.Rule} {thinnest.Subject}", 120),
                candidate.Dissipation is { } heat ? Figures.Text(heat, "W") : "",
                candidate.Undecided.IsEmpty ? "" : Count(candidate.Undecided.Length) + Text($" ({string.Join(", ", candidate.Undecided.Select(one => one.Rule).Distinct())})"),
                candidate.Alternates == 0 ? "" : Count(candidate.Alternates));
        }

        console.MarkupLine("Passing, best first (margin: capacity over demand):");
        console.Write(table);
        if (choice.Passing.Length > most)
        {
            console.MarkupLine($"{Count(choice.Passing.Length - most)} more pass; --most N shows more.");
        }
    }

    private static void WriteMisses(IAnsiConsole console, PartChoice choice)
    {
        if (choice.NearMisses.IsEmpty)
        {
            return;
        }

        var table = Table(("part", false), ("margin", true), ("rule", false), ("because", false));
        foreach (var miss in choice.NearMisses)
        {
            var first = miss.RuledOutBy[0];
            table.AddRow(Text(miss.Label), Shown.Margin(first.Margin), Text(first.Rule), Text(miss.RuledOutBy.Length > 1 ? $"{first.Message} (and {miss.RuledOutBy.Length - 1} more)" : first.Message, 300));
        }

        console.MarkupLine("Near misses, nearest first:");
        console.Write(table);
    }

    private static void WriteWindow(IAnsiConsole console, PartChoice choice, object part)
    {
        if (choice.Window is not { } window)
        {
            return;
        }

        console.MarkupLine(Text($"Rating window among the parts tried: {Rating(window.Least, part)} to {Rating(window.Most, part)}"));
        Bound("below", window.Below);
        Bound("above", window.Above);

        void Bound(string side, NearMiss? miss)
        {
            if (miss is not null)
            {
                console.MarkupLine(Text($"  {side}: {miss.Label} ({Rating(miss.Rating, part)}) fails {miss.RuledOutBy[0].Rule}: {miss.RuledOutBy[0].Message}", 400));
            }
        }
    }

    private static Table Table(params (string Name, bool IsNumber)[] columns)
    {
        var table = new Table { Border = TableBorder.Rounded, ShowRowSeparators = false };
        foreach (var (name, isNumber) in columns)
        {
            var column = new TableColumn(name);
            table.AddColumn(isNumber ? column.RightAligned().NoWrap() : column);
        }

        return table;
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Text(string text, int length = 200) => Markup.Escape(Shown.Short(text, length));
}
