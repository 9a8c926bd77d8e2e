using System.Globalization;
using System.Text;
using RailRules.Tables;

namespace RailRules.Analyzers.Generation;

/// <summary>What a table's class is made of; equal for equal tables.</summary>
/// <param name="Path">Where the table lies.</param>
/// <param name="Class">The name of the class.</param>
/// <param name="Record">The record of which the parts are.</param>
/// <param name="Text">The table in its settled form.</param>
/// <param name="Faults">What could not be read, for the evaluator; empty where all could.</param>
/// <param name="Members">The members.</param>
internal sealed record PartsTableModel(string Path, string Class, string Record, string Text, string Faults, EquatableArray<PartsTableMember> Members)
{
    private const int RatingsShown = 5;

    /// <summary>The model of a table; null where its header does not say what it holds.</summary>
    public static PartsTableModel? Of(string path, PartsTableText table)
    {
        if (table.Record is null)
        {
            return null;
        }

        var name = TableIdentifiers.OfTable(path);
        var names = TableIdentifiers.Assign(table, name);
        var members = table.Rows.Where(row => names[row.Index] is not null).Select(row => new PartsTableMember(names[row.Index]!, row.Index, Summary(table, row), Citation(table, row)));
        return new PartsTableModel(path, name, table.Record.Name, table.ToCanonical(), CarriedFaults.Write(table), new EquatableArray<PartsTableMember>([.. members]));
    }

    /// <summary>The first ratings stated, in the table's own order.</summary>
    private static string Summary(PartsTableText table, TableRow row)
    {
        var text = new StringBuilder();
        var shown = 0;
        for (var i = 1; i < table.Columns.Count && shown < RatingsShown; i++)
        {
            if (table.Columns[i] is not { } used || used.Column.Shape is not TableScalar scalar || used.Column.Datum is nameof(Element.Citation) or nameof(Element.Name) || row.Text(i) is not { Length: > 0 and < 60 } value)
            {
                continue;
            }

            text.Append(shown++ == 0 ? ": " : ", ").Append(Words(used.Column.Name)).Append(' ').Append(value);
            if (scalar.NeedsUnit)
            {
                text.Append(' ').Append(used.Units[0].Symbol);
            }
        }

        return row.PartNumber + text;
    }

    private static string Citation(PartsTableText table, TableRow row)
    {
        for (var i = 1; i < table.Columns.Count; i++)
        {
            if (table.Columns[i]?.Column.Datum == nameof(Element.Citation))
            {
                return row.Text(i);
            }
        }

        return "";
    }

    /// <summary>rated current for RatedCurrent.</summary>
    private static string Words(string name)
    {
        var words = new StringBuilder(name.Length + 4);
        foreach (var c in name)
        {
            if (char.IsUpper(c) && words.Length > 0)
            {
                words.Append(' ');
            }

            words.Append(char.ToLowerInvariant(c));
        }

        return words.ToString();
    }
}

/// <summary>The member of one part.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Row">Its row in the table's settled form.</param>
/// <param name="Summary">Part number and key ratings.</param>
/// <param name="Citation">Where the data come from; empty where the table does not say.</param>
internal sealed record PartsTableMember(string Name, int Row, string Summary, string Citation);

/// <summary>
/// Data that were written and cannot be read, as the generated class carries them beside the table: a line each, row, datum, line, column and message with tabs
/// between them. Row −1 concerns every part, an empty datum all data of the row.
/// </summary>
internal sealed record CarriedFault(int Row, string Datum, int Line, int Column, string Message);

internal static class CarriedFaults
{
    public static string Write(PartsTableText table)
    {
        var text = new StringBuilder();
        foreach (var fault in table.Faults)
        {
            if (fault.Row is not null || fault.Datum is not null)
            {
                text.AppendFormat(CultureInfo.InvariantCulture, "{0}\t{1}\t{2}\t{3}\t", fault.Row?.Index ?? -1, fault.Datum, fault.Cell.Line + 1, fault.Cell.Column + 1)
                    .Append(TableFaultText.OneLine(fault.Message)).Append('\n');
            }
        }

        return text.ToString();
    }

    public static List<CarriedFault> Read(string text)
    {
        var faults = new List<CarriedFault>();
        foreach (var line in text.Split(['\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            var parts = line.Split(['\t'], 5);
            if (parts.Length == 5 && Number(parts[0]) is { } row && Number(parts[2]) is { } at && Number(parts[3]) is { } column)
            {
                faults.Add(new CarriedFault(row, parts[1], at, column, parts[4]));
            }
        }

        return faults;
    }

    private static int? Number(string text) => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;
}
