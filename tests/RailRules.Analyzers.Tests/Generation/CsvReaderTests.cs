using System.Globalization;
using CsCheck;
using CsvHelper;
using CsvHelper.Configuration;
using Microsoft.CodeAnalysis.Text;
using RailRules.Tables;
using CsvReader = RailRules.Tables.CsvReader;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>The reader against RFC 4180's own rules and examples (section 2), against CsvHelper as the oracle, and its places against the compiler's own line counting.</summary>
public sealed class CsvReaderTests
{
    /// <summary>Characters that matter to the grammar, and few others, so that they meet.</summary>
    private static readonly Gen<string> Soup = Draw.From("a", ",", "\"", "\"\"", "\r", "\n", "\r\n", " ", "µ", "\u2028").Array[0, 40].Select(string.Concat);

    private static readonly Gen<string[][]> Records = Gen.OneOf(Gen.String[Gen.Char["ab, \"\r\n;µΩ\t'"], 0, 6], Gen.String[0, 5], Gen.Const("10000@80")).Array[1, 5].Array[0, 6];

    [Theory]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc", "zzz|yyy|xxx")] // RFC 4180, 2.1
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc", "zzz|yyy|xxx")] // 2.2
    [InlineData("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc", "zzz|yyy|xxx")] // 2.5
    [InlineData("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc", "zzz|yyy|xxx")] // 2.6
    [InlineData("\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc")] // 2.7
    [InlineData("a b , c", "a b | c")] // 2.4: spaces are part of a field
    [InlineData("\uFEFFa,b", "a|b")]
    [InlineData("a\nb\rc", "a", "b", "c")]
    [InlineData("\n\r\n\ra\n\n,\n", "a", "|")]
    [InlineData("a,", "a|")]
    [InlineData("")]
    [InlineData("\uFEFF")]
    public void Reads_as_the_standard_says(string text, params string[] expected)
    {
        var (records, _) = Read(text);
        Assert.Equal(expected, records.Select(record => string.Join("|", record)));
    }

    [Theory]
    [InlineData("a\"b", CsvShape.QuoteInside)]
    [InlineData("\"a\"b", CsvShape.TextAfterQuote)]
    [InlineData("\"a\" ", CsvShape.TextAfterQuote)]
    [InlineData("\"a,b\nc", CsvShape.Unclosed)]
    [InlineData("\"", CsvShape.Unclosed)]
    [InlineData("\"a\"\"", CsvShape.Unclosed)]
    [InlineData("\"a\"", CsvShape.Quoted)]
    [InlineData("\"\"", CsvShape.Quoted)]
    [InlineData("\"\"\"\"", CsvShape.QuotedWithQuotes)]
    public void Tells_cells_that_the_standard_does_not_allow(string text, object shape) => Assert.Equal(shape, Cells(text)[0].Shape);

    [Fact]
    public void Reads_what_a_well_kept_writer_writes() => Records.Sample(records =>
    {
        var writer = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(writer, CultureInfo.InvariantCulture))
        {
            foreach (var record in records)
            {
                foreach (var cell in record)
                {
                    csv.WriteField(cell);
                }

                csv.NextRecord();
            }
        }

        var (read, faults) = Read(writer.ToString());
        Assert.Equal(0, faults);

        // A line end alone is a blank line to every reader: a record of one empty cell cannot be told from it.
        Assert.Equal(records.Where(record => record is not [""]), read);
    }, iter: 3000);

    [Fact]
    public void Reads_any_text_as_a_well_kept_reader_does() => Gen.OneOf(Soup, Records.Select(Write)).Sample(text =>
    {
        var (records, faults) = Read(text);
        if (faults == 0)
        {
            Assert.Equal(Oracle(text), records);
        }
    }, iter: 10000);

    [Fact]
    public void What_is_written_is_read_back_without_faults() => Records.Sample(records =>
    {
        var (read, faults) = Read(Write(records));
        Assert.Equal(0, faults);
        Assert.Equal(records.Where(record => record is not [""]), read);
    }, iter: 3000);

    [Fact]
    public void A_text_cut_at_every_character_is_read_as_far_as_it_goes()
    {
        const string text = "\uFEFFFuse,\"RatedCurrent [A]\",Citation\r\nTarn-1,1,\"said \"\"so\"\",\nand so\"\r\n\r\nTarn-2,2,plain\n";
        for (var length = 0; length <= text.Length; length++)
        {
            var cut = text[..length];
            var (records, faults) = Read(cut);
            if (faults == 0)
            {
                Assert.Equal(Oracle(cut), records);
            }

            PlacesAreTrue(cut);
        }
    }

    [Fact]
    public void A_cell_of_a_megabyte_is_one_cell()
    {
        var cell = string.Concat(Enumerable.Repeat("25:1.00 \"60\",\r\n", 70_000));
        Assert.True(cell.Length > 1_000_000);
        var text = "a," + CsvCell.Write(cell) + ",b\n";
        var cells = Cells(text);
        Assert.Equal(["a", cell, "b"], cells.Select(found => found.Value));
        Assert.Equal(cells[1].Line + 70_000, cells[1].EndLine);
    }

    [Fact]
    public void Every_cell_knows_its_place() => Gen.OneOf(Soup, Records.Select(Write), Gen.String).Sample(PlacesAreTrue, iter: 5000);

    [Fact]
    public void A_reader_can_begin_at_any_record()
    {
        const string text = "a,b\r\n\"c\nd\",e\nf,g";
        var reader = new CsvReader(text);
        var cells = new List<CsvCell>();
        var starts = new List<int>();
        while (reader.TryRead(cells))
        {
            starts.Add(cells[0].Start);
        }

        var second = new CsvReader(text, starts[1]);
        Assert.True(second.TryRead(cells));
        Assert.Equal(["c\nd", "e"], cells.Select(cell => cell.Value));
    }

    private static void PlacesAreTrue(string text)
    {
        var source = SourceText.From(text);
        var last = 0;
        foreach (var cell in Cells(text))
        {
            Assert.True(cell.Start >= last && cell.End >= cell.Start && cell.End <= text.Length);
            last = cell.End;
            var span = source.Lines.GetLinePositionSpan(TextSpan.FromBounds(cell.Start, cell.End));
            Assert.Equal(span, new LinePositionSpan(new LinePosition(cell.Line, cell.Column), new LinePosition(cell.EndLine, cell.EndColumn)));
            if (cell.Shape == CsvShape.Plain)
            {
                Assert.Equal(text[cell.Start..cell.End], cell.Value);
            }
        }
    }

    private static string Write(string[][] records) => string.Concat(records.Select(record => string.Join(",", record.Select(CsvCell.Write)) + "\n"));

    private static List<CsvCell> Cells(string text)
    {
        var all = new List<CsvCell>();
        var reader = new CsvReader(text);
        var cells = new List<CsvCell>();
        while (reader.TryRead(cells))
        {
            all.AddRange(cells);
        }

        return all;
    }

    private static (string[][] Records, int Faults) Read(string text)
    {
        var records = new List<string[]>();
        var faults = 0;
        var reader = new CsvReader(text);
        var cells = new List<CsvCell>();
        while (reader.TryRead(cells))
        {
            records.Add([.. cells.Select(cell => cell.Value)]);
            faults += cells.Count(cell => cell.IsFaulty);
        }

        return ([.. records], faults);
    }

    private static string[][] Oracle(string text)
    {
        var records = new List<string[]>();
        using var parser = new CsvParser(new StringReader(text.TrimStart('\uFEFF')), new CsvConfiguration(CultureInfo.InvariantCulture) { HasHeaderRecord = false, Delimiter = "," });
        while (parser.Read())
        {
            records.Add(parser.Record!);
        }

        return [.. records];
    }
}
