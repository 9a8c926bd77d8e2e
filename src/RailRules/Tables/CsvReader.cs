namespace RailRules.Tables;

/// <summary>
/// Reads comma-separated values as RFC 4180 writes them, and knows where each cell stands. Never throws. CRLF, LF and CR end a record; blank lines are skipped;
/// a byte-order mark is skipped; quoted cells may hold commas, line ends and doubled quotes.
/// </summary>
internal struct CsvReader
{
    private readonly string text;
    private int position;
    private int line;
    private int lineStart;

    public CsvReader(string text)
    {
        this.text = text;
        position = text.Length > 0 && text[0] == '\uFEFF' ? 1 : 0;
    }

    /// <summary>A reader that begins at a place where a record begins; its line numbers count from there.</summary>
    public CsvReader(string text, int start)
        : this(text)
    {
        if (start > 0)
        {
            position = lineStart = start;
        }
    }

    /// <summary>Where the next record is looked for.</summary>
    public readonly int Position => position;

    /// <summary>Reads the next record; false at the end of the text.</summary>
    /// <param name="cells">Cleared, and filled with the record's cells.</param>
    public bool TryRead(List<CsvCell> cells)
    {
        cells.Clear();
        while (position < text.Length && text[position] is '\r' or '\n')
        {
            Advance();
        }

        if (position >= text.Length)
        {
            return false;
        }

        while (true)
        {
            cells.Add(ReadCell());
            if (position >= text.Length || text[position] != ',')
            {
                return true;
            }

            position++;
        }
    }

    private CsvCell ReadCell()
    {
        var start = position;
        var (startLine, startColumn) = (line, position - lineStart);
        var shape = CsvShape.Plain;
        if (position < text.Length && text[position] == '"')
        {
            shape = ReadQuoted();
            if (position < text.Length && text[position] is not (',' or '\r' or '\n'))
            {
                shape = CsvShape.TextAfterQuote;
                SkipPlain();
            }
        }
        else if (SkipPlain())
        {
            shape = CsvShape.QuoteInside;
        }

        return new CsvCell(text, start, position, startLine, startColumn, line, position - lineStart, shape);
    }

    private CsvShape ReadQuoted()
    {
        var shape = CsvShape.Quoted;
        position++;
        while (position < text.Length)
        {
            if (text[position] != '"')
            {
                Advance();
            }
            else if (position + 1 < text.Length && text[position + 1] == '"')
            {
                shape = CsvShape.QuotedWithQuotes;
                position += 2;
            }
            else
            {
                position++;
                return shape;
            }
        }

        return CsvShape.Unclosed;
    }

    /// <summary>Goes to the end of an unquoted cell; whether a quote stands in it.</summary>
    private bool SkipPlain()
    {
        var quote = false;
        while (position < text.Length && text[position] is var c and not (',' or '\r' or '\n'))
        {
            quote |= c == '"';
            Advance();
        }

        return quote;
    }

    /// <summary>One character on; two at a CRLF. Lines are counted as the compiler counts them, so that its findings print the same numbers.</summary>
    private void Advance()
    {
        var c = text[position++];
        if (c is '\n' or '\u0085' or '\u2028' or '\u2029')
        {
            line++;
            lineStart = position;
        }
        else if (c == '\r')
        {
            if (position < text.Length && text[position] == '\n')
            {
                position++;
            }

            line++;
            lineStart = position;
        }
    }
}

/// <summary>How a cell is written; the last three are faults.</summary>
internal enum CsvShape
{
    /// <summary>Without quotes.</summary>
    Plain,

    /// <summary>In quotes.</summary>
    Quoted,

    /// <summary>In quotes, with doubled quotes inside.</summary>
    QuotedWithQuotes,

    /// <summary>Without quotes, with a quote inside.</summary>
    QuoteInside,

    /// <summary>With text behind the closing quote.</summary>
    TextAfterQuote,

    /// <summary>With a quote that nothing closes.</summary>
    Unclosed,
}

/// <summary>One cell and where it stands. Offsets, lines and columns count from zero; the quotes belong to the cell.</summary>
internal readonly struct CsvCell(string text, int start, int end, int line, int column, int endLine, int endColumn, CsvShape shape)
{
    private readonly string text = text;

    public int Start { get; } = start;

    public int End { get; } = end;

    public int Line { get; } = line;

    public int Column { get; } = column;

    public int EndLine { get; } = endLine;

    public int EndColumn { get; } = endColumn;

    public CsvShape Shape { get; } = shape;

    public bool IsFaulty => Shape >= CsvShape.QuoteInside;

    /// <summary>What the cell says, without its quotes; a faulty cell's characters as they stand.</summary>
    public string Value => Shape switch
    {
        CsvShape.Quoted => text.Substring(Start + 1, End - Start - 2),
        CsvShape.QuotedWithQuotes => text.Substring(Start + 1, End - Start - 2).Replace("\"\"", "\""),
        _ => text.Substring(Start, End - Start),
    };

    /// <summary>What the cell says, without blanks around it.</summary>
    public string Trimmed => Value.Trim();

    /// <summary>Whether the cell says nothing.</summary>
    public bool IsEmpty
    {
        get
        {
            for (var i = Start; i < End; i++)
            {
                if (!char.IsWhiteSpace(text[i]) && text[i] != '"')
                {
                    return false;
                }
            }

            return !IsFaulty && Shape != CsvShape.QuotedWithQuotes;
        }
    }

    /// <summary>Writes a cell, in quotes where it must be.</summary>
    public static string Write(string value) =>
        value.IndexOfAny(['"', ',', '\r', '\n']) < 0 ? value : "\"" + value.Replace("\"", "\"\"") + "\"";
}
