using System.Globalization;
using RailRules.Tables;

namespace RailRules.Analyzers.Generation;

/// <summary>Words of the findings in parts tables.</summary>
internal static class TableFaultText
{
    /// <summary>'Fuses' line 3, 'Reed20', column 'RatedCurrent [A]': what is wrong.</summary>
    public static string Of(TableFault fault, PartsTableText table, string name)
    {
        var line = (fault.Cell.Line + 1).ToString(CultureInfo.InvariantCulture);
        var part = fault.Row is { } row && fault.Datum is not null ? $", '{row.PartNumber}'" : "";
        var column = fault.Row is null ? -1 : Array.FindIndex(fault.Row.Cells, cell => cell.Start == fault.Cell.Start);
        var header = fault.Datum is not null && column >= 0 && column < table.Columns.Count ? table.Columns[column] : null;
        return OneLine($"'{name}' line {line}{part}{(header is null ? "" : $", column '{header.Cell.Trimmed}'")}: {fault.Message}");
    }

    /// <summary>Text on one line: cells may hold line ends.</summary>
    public static string OneLine(string text) => text.IndexOfAny(['\r', '\n', '\t', '\u0085', '\u2028', '\u2029', '\0']) < 0
        ? text
        : string.Join(" ", text.Split(['\r', '\n', '\t', '\u0085', '\u2028', '\u2029', '\0'], StringSplitOptions.RemoveEmptyEntries));
}
