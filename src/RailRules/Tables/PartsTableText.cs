using System.Text;

namespace RailRules.Tables;

/// <summary>
/// A parts table as text: the header names the record and the data with their units, each further line is a part. Never throws; what cannot be read is told with its
/// place, and the rest stays usable. Generator, analyzer and running program read with this class, so that all three have the same part.
/// </summary>
internal sealed class PartsTableText
{
    private readonly List<TableFault> faults = [];
    private readonly List<TableRow> rows = [];
    private readonly Dictionary<string, TableRow> byPartNumber = new(StringComparer.Ordinal);
    private readonly TableColumnInUse?[] columns = [];

    private readonly HashSet<int> toldColumns = [];
    private readonly bool check;

    private PartsTableText(string text, bool check)
    {
        this.check = check;
        var reader = new CsvReader(text);
        var header = new List<CsvCell>();
        if (!reader.TryRead(header))
        {
            Tell(new CsvCell(text, 0, 0, 0, 0, 0, 0, CsvShape.Plain), "the table is empty: its first line names the record and the data, for example 'Fuse,RatedCurrent [A],DcVoltageRating [V]'");
            return;
        }

        Record = ReadRecord(header);
        if (Record is null)
        {
            return;
        }

        columns = new TableColumnInUse?[header.Count];
        ReadHeader(header);
        var cells = new List<CsvCell>(header.Count);
        while (reader.TryRead(cells))
        {
            ReadRow(cells);
        }

        if (check)
        {
            CheckAlternates();
        }
    }

    /// <summary>What the table holds; null where its header does not say.</summary>
    public TableRecord? Record { get; }

    /// <summary>The parts, in the order of the table; what has no part number of its own is none.</summary>
    public IReadOnlyList<TableRow> Rows => rows;

    /// <summary>Everything that cannot be read, in the order met.</summary>
    public IReadOnlyList<TableFault> Faults => faults;

    /// <summary>The columns by their place; null where a column cannot be read. The first is that of the part numbers and null too.</summary>
    public IReadOnlyList<TableColumnInUse?> Columns => columns;

    /// <summary>Reads a table that people write, and checks every cell.</summary>
    public static PartsTableText Read(string text) => new(text, check: true);

    /// <summary>Reads a table that <see cref="ToCanonical"/> wrote: its cells are read when a part is made.</summary>
    public static PartsTableText ReadCanonical(string text) => new(text, check: false);

    /// <summary>The table in one settled form: usual spelling of units, no blanks, LF, cells that cannot be read left empty.</summary>
    public string ToCanonical()
    {
        var text = new StringBuilder();
        text.Append(Record?.Name);
        foreach (var column in columns)
        {
            if (column is not null)
            {
                text.Append(',').Append(CsvCell.Write(column.Column.Header(column.Units)));
            }
        }

        text.Append('\n');
        foreach (var row in rows)
        {
            text.Append(CsvCell.Write(row.PartNumber));
            for (var i = 1; i < columns.Length; i++)
            {
                if (columns[i] is not null)
                {
                    text.Append(',').Append(CsvCell.Write(row.Text(i)));
                }
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The part of a row.</summary>
    public object Make(TableRow row) => Make(row, withAlternates: true);

    private object Make(TableRow row, bool withAlternates)
    {
        var part = Record!.Create(row.PartNumber);
        for (var i = 1; i < columns.Length; i++)
        {
            if (columns[i] is not { } column || row.Text(i) is not { Length: > 0 } text || column.Column.Shape.Read(text, column.Units, out var value) is not null)
            {
                continue;
            }

            if (column.Column.Shape is not TablePartNumbers)
            {
                column.Column.Set(part, value!);
            }
            else if (withAlternates)
            {
                // An alternate stands for itself: its own alternates are no alternates of this part.
                var alternates = TableNames.Split(text).Select(number => (Element)Make(byPartNumber[number], withAlternates: false));
                column.Column.Set(part, System.Collections.Immutable.ImmutableArray.CreateRange(alternates));
            }
        }

        return part;
    }

    private TableRecord? ReadRecord(List<CsvCell> header)
    {
        var name = header[0].Trimmed;
        if (TableRecord.Find(name) is { } found && !header[0].IsFaulty)
        {
            return found;
        }

        var known = string.Join(", ", TableRecord.All.Select(record => record.Name));
        if (header.Count == 1 && name.IndexOf(';') >= 0)
        {
            Tell(header[0], "the cells are separated by semicolons; save the table with commas between its cells");
        }
        else if (name.Length == 0 || name.IndexOf('[') >= 0 || TableRecord.All.Any(record => record.FindColumn(name) is not null) || name is nameof(Element.PartNumber))
        {
            Tell(header[0], $"the column of part numbers is missing: the first column holds them, and its header names the record: {known}");
        }
        else
        {
            Tell(header[0], $"'{Shorten(name)}' is no record of parts{Suggest(name, TableRecord.All.Select(record => record.Name))}; the header's first cell names one of {known}");
        }

        return null;
    }

    private void ReadHeader(List<CsvCell> header)
    {
        for (var i = 1; i < header.Count; i++)
        {
            var written = header[i].Trimmed;
            if (written.Length == 0)
            {
                continue;
            }

            toldColumns.Add(i);
            if (FaultOf(header[i]) is { } malformed)
            {
                Tell(header[i], malformed);
                continue;
            }

            var bracket = written.IndexOf('[');
            var name = bracket < 0 ? written : written.Substring(0, bracket).TrimEnd();
            string? unit = null;
            if (bracket >= 0)
            {
                if (written[written.Length - 1] != ']')
                {
                    Tell(header[i], $"'{Shorten(written)}' lacks the closing bracket of its unit", datum: Record!.FindColumn(name)?.Datum);
                    continue;
                }

                unit = written.Substring(bracket + 1, written.Length - bracket - 2);
            }

            if (Record!.FindColumn(name) is not { } column)
            {
                var nearest = Nearest(name, Record.Columns.Select(known => known.Name));
                Tell(header[i], UnknownColumn(name, nearest), datum: nearest is null ? null : Record.FindColumn(nearest)!.Datum);
            }
            else if (Array.Find(columns, used => used?.Column == column) is { } first)
            {
                Tell(header[i], $"{name} is a column already", other: first.Cell);
            }
            else if (column.ReadUnits(unit, out var units) is { } fault)
            {
                Tell(header[i], fault, datum: column.Datum);
            }
            else
            {
                columns[i] = new TableColumnInUse(column, units, header[i]);
            }
        }
    }

    private string UnknownColumn(string name, string? nearest)
    {
        if (Record!.Type.GetProperty(name) is { } property && TableRecord.ReasonLeftOut(property) is { } reason)
        {
            return $"{name} has no column: {reason}";
        }

        return $"'{Shorten(name)}' is no datum of {Record.Name}" + (nearest is null ? "" : $"; did you mean {nearest}?");
    }

    private void ReadRow(List<CsvCell> cells)
    {
        if (cells.TrueForAll(cell => cell.IsEmpty))
        {
            return;
        }

        var number = cells[0].IsFaulty ? "" : cells[0].Trimmed;
        if (number.Length == 0)
        {
            Tell(cells[0], FaultOf(cells[0]) ?? $"the part number is missing, so this line is no {Record!.Name}");
            return;
        }

        if (byPartNumber.TryGetValue(number, out var first))
        {
            Tell(cells[0], $"'{Shorten(number)}' is in the table already, on line {first.Cells[0].Line + 1}; this line is left out", other: first.Cells[0]);
            return;
        }

        var row = new TableRow(rows.Count, number, [.. cells], columns.Length);
        rows.Add(row);
        byPartNumber.Add(number, row);
        if (cells.Count < columns.Length || cells.Skip(columns.Length).Any(cell => !cell.IsEmpty))
        {
            row.IsUnread = true;
            var last = cells[cells.Count - 1];
            var whole = new CsvCell("", cells[0].Start, last.End, cells[0].Line, cells[0].Column, last.EndLine, last.EndColumn, CsvShape.Plain);
            Tell(whole, $"{number} has {cells.Count} cells and the header {columns.Length}, so none of its data can be told apart; a comma inside a cell needs quotes around the cell", row);
            return;
        }

        for (var i = 1; check && i < columns.Length; i++)
        {
            ReadCell(row, i);
        }
    }

    private void ReadCell(TableRow row, int at)
    {
        var cell = row.Cells[at];
        if (cell.IsEmpty)
        {
            return;
        }

        if (columns[at] is not { } column)
        {
            // Below a header that cannot be read nothing more is told; below an empty one a value has no meaning.
            if (toldColumns.Add(at))
            {
                Tell(cell, $"'{Shorten(cell.Trimmed)}' stands below an empty header");
            }

            return;
        }

        var fault = FaultOf(cell) ?? column.Column.Shape.Read(cell.Trimmed, column.Units, out _);
        if (fault is not null)
        {
            row.SetUnreadable(at);
            Tell(cell, fault, row, column.Column.Datum);
        }
    }

    private void CheckAlternates()
    {
        for (var i = 1; i < columns.Length; i++)
        {
            if (columns[i]?.Column is not { Shape: TablePartNumbers } column)
            {
                continue;
            }

            foreach (var row in rows)
            {
                var unknown = TableNames.Split(row.Text(i)).FirstOrDefault(number => number == row.PartNumber || !byPartNumber.ContainsKey(number));
                if (unknown is not null)
                {
                    row.SetUnreadable(i);
                    Tell(row.Cells[i], unknown == row.PartNumber ? $"'{Shorten(unknown)}' is no alternate of itself" : $"'{Shorten(unknown)}' is no part of this table{Suggest(unknown, byPartNumber.Keys)}", row, column.Datum);
                }
            }
        }
    }

    private static string? FaultOf(CsvCell cell) => cell.Shape switch
    {
        CsvShape.QuoteInside => "a quote stands inside a cell without quotes; put the cell in quotes and double the quote",
        CsvShape.TextAfterQuote => "text stands behind the closing quote; a quote inside a quoted cell is doubled",
        CsvShape.Unclosed => "nothing closes this quote, so the rest of the table is part of this cell",
        _ => null,
    };

    private void Tell(CsvCell cell, string message, TableRow? row = null, string? datum = null, CsvCell? other = null) =>
        faults.Add(new TableFault(cell, message) { Row = row, Datum = datum, Other = other });

    private static string Shorten(string text) => text.Length <= 40 ? text : text.Substring(0, 37) + "...";

    private static string Suggest(string name, IEnumerable<string> known) => Nearest(name, known) is { } nearest ? $"; did you mean {nearest}?" : "";

    /// <summary>The known name that is nearest to a wrong one by edits; null where none is near.</summary>
    internal static string? Nearest(string name, IEnumerable<string> known)
    {
        if (name.Length > 100)
        {
            return null;
        }

        var wanted = Bare(name);
        string? nearest = null;
        var least = Math.Max(2, wanted.Length / 3) + 1;
        foreach (var candidate in known)
        {
            var distance = Distance(wanted, Bare(candidate), least);
            if (distance < least)
            {
                (nearest, least) = (candidate, distance);
            }
        }

        return nearest;
    }

    private static string Bare(string name) => new([.. name.Where(char.IsLetterOrDigit).Select(char.ToUpperInvariant)]);

    private static int Distance(string left, string right, int limit)
    {
        if (Math.Abs(left.Length - right.Length) >= limit)
        {
            return limit;
        }

        var previous = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 0; i < left.Length; i++)
        {
            var current = new int[right.Length + 1];
            current[0] = i + 1;
            for (var j = 0; j < right.Length; j++)
            {
                current[j + 1] = Math.Min(Math.Min(current[j], previous[j + 1]) + 1, previous[j] + (left[i] == right[j] ? 0 : 1));
            }

            previous = current;
        }

        return previous[right.Length];
    }
}

/// <summary>A column of a table.</summary>
/// <param name="Column">Which.</param>
/// <param name="Units">In which units.</param>
/// <param name="Cell">Its header.</param>
internal sealed record TableColumnInUse(TableColumn Column, TableUnit[] Units, CsvCell Cell);

/// <summary>A line of a table that is a part.</summary>
internal sealed class TableRow(int index, string partNumber, CsvCell[] cells, int columns)
{
    private HashSet<int>? unreadable;

    /// <summary>Its place among the parts.</summary>
    public int Index { get; } = index;

    public string PartNumber { get; } = partNumber;

    public CsvCell[] Cells { get; } = cells;

    /// <summary>Whether none of its data can be told apart.</summary>
    public bool IsUnread { get; set; }

    public void SetUnreadable(int column) => (unreadable ??= []).Add(column);

    /// <summary>What the cell of a column says; empty where it says nothing or cannot be read.</summary>
    public string Text(int column) => IsUnread || column >= columns || column >= Cells.Length || unreadable?.Contains(column) == true ? "" : Cells[column].Trimmed;
}

/// <summary>Something in a table that cannot be read.</summary>
/// <param name="Cell">Where.</param>
/// <param name="Message">What is wrong, without a final period.</param>
internal sealed record TableFault(CsvCell Cell, string Message)
{
    /// <summary>The part it concerns; null: the table or a column.</summary>
    public TableRow? Row { get; init; }

    /// <summary>The datum that is unknown because of it; null: all of the row's where there is a row, else none.</summary>
    public string? Datum { get; init; }

    /// <summary>Where the other one of two stands.</summary>
    public CsvCell? Other { get; init; }
}
