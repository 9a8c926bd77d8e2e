using CsCheck;
using RailRules.Analyzers.Generation;
using RailRules.Tables;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>What is wrong in a table is told with its place, and nothing else is lost by it.</summary>
public sealed class TableFaultTests
{
    private const string Good = "Fuse,RatedCurrent [A],DcVoltageRating [V]\n";

    [Theory]
    [InlineData("", 1, 1, "the table is empty")]
    [InlineData("\uFEFF\r\n\r\n", 1, 1, "the table is empty")]
    [InlineData("Fuze,RatedCurrent [A]\n", 1, 1, "'Fuze' is no record of parts; did you mean Fuse?")]
    [InlineData("Supply,Voltage [V]\n", 1, 1, "'Supply' is no record of parts")]
    [InlineData("RatedCurrent [A],DcVoltageRating [V]\n20,80\n", 1, 1, "the column of part numbers is missing")]
    [InlineData("PartNumber,RatedCurrent [A]\n", 1, 1, "the column of part numbers is missing")]
    [InlineData("Fuse;RatedCurrent [A]\nReed;20\n", 1, 1, "separated by semicolons")]
    [InlineData("Fuse,RatedCurent [A]\nReed,20\n", 1, 6, "'RatedCurent' is no datum of Fuse; did you mean RatedCurrent?")]
    [InlineData("Fuse,Rated Current [A]\nReed,20\n", 1, 6, "did you mean RatedCurrent?")]
    [InlineData("Fuse,Colour\nReed,red\n", 1, 6, "'Colour' is no datum of Fuse")]
    [InlineData("Fuse,RatedCurrent [V]\nReed,20\n", 1, 6, "'[V]' is no unit of current; RatedCurrent is stated in A, µA, mA, kA")]
    [InlineData("Fuse,RatedCurrent\nReed,20\n", 1, 6, "RatedCurrent needs its unit, for example 'RatedCurrent [A]'")]
    [InlineData("Fuse,RatedCurrent [A\nReed,20\n", 1, 6, "lacks the closing bracket")]
    [InlineData("Fuse,Citation [A]\nReed,x\n", 1, 6, "Citation has no unit")]
    [InlineData("Fuse,MeltingIntegral [kA²s]\nReed,20\n", 1, 6, "'[kA²s]' is no unit of I²t")]
    [InlineData("Fuse,Derating [°C:V]\nReed,25:1\n", 1, 6, "'[V]' is no unit of number")]
    [InlineData("Fuse,Derating [°C:1:1]\nReed,25:1\n", 1, 6, "names more units than Derating has")]
    [InlineData("Fuse,RatedCurrent [A],RatedCurrent [mA]\nReed,20,1\n", 1, 23, "RatedCurrent is a column already")]
    [InlineData("Fuse,Designator\nReed,F1\n", 1, 6, "Designator has no column: it belongs to a place")]
    [InlineData("Fuse,PartNumber\nReed,x\n", 1, 6, "PartNumber has no column: it is the first column")]
    [InlineData("Fuse,,RatedCurrent [A]\nReed,x,1\n", 2, 6, "'x' stands below an empty header")]
    [InlineData(Good + "Reed,\"20,5\",80\n", 4 - 2, 6, "'20,5' is not a current in A: a number is written with a point, 20.5")]
    [InlineData(Good + "Reed,20 A,80\n", 2, 6, "'20 A' is not a current in A")]
    [InlineData(Good + "Reed,10 000,80\n", 2, 6, "'10 000' is not a current in A")]
    [InlineData(Good + "Reed,1e999,80\n", 2, 6, "'1e999' is too large")]
    [InlineData(Good + "Reed,NaN,80\n", 2, 6, "'NaN' is not a current in A")]
    [InlineData(Good + "Reed,∞,80\n", 2, 6, "'∞' is not a current in A")]
    [InlineData(Good + "Reed,20,80\nBeck,21,80\nReed,22,80\n", 4, 1, "'Reed' is in the table already, on line 2")]
    [InlineData(Good + ",20,80\n", 2, 1, "the part number is missing")]
    [InlineData(Good + "Reed,20\n", 2, 1, "Reed has 2 cells and the header 3")]
    [InlineData(Good + "Reed,20,5,80\n", 2, 1, "Reed has 4 cells and the header 3")]
    [InlineData(Good + "Reed,2\"0,80\n", 2, 6, "a quote stands inside a cell without quotes")]
    [InlineData(Good + "Reed,\"20\"A,80\n", 2, 6, "text stands behind the closing quote")]
    [InlineData("Fuse,RatedCurrent [A]\nReed,\"20\nBeck,25\n", 2, 6, "nothing closes this quote")]
    [InlineData("Fuse,ColdResistance [mΩ]\nReed,1.2..1.5..1.8..2\n", 2, 6, "is not a band")]
    [InlineData("Fuse,ColdResistance [mΩ]\nReed,1.2-1.8\n", 2, 6, "'1.2-1.8' is not a resistance in mΩ")]
    [InlineData("Fuse,ColdResistance [mΩ]\nReed,1.2..\n", 2, 6, "'' is not a resistance in mΩ, nor a band of it")]
    [InlineData("Fuse,Derating [°C]\nReed,25:1.00 60\n", 2, 6, "'60' lacks Factor")]
    [InlineData("Fuse,Derating [°C]\nReed,25:1:2\n", 2, 6, "'25:1:2' has too many parts")]
    [InlineData("Fuse,Derating [°C]\nReed,25:1.00 60:0.86; 85:0.71\n", 2, 6, "'0.86;' is not a number")]
    [InlineData("Fuse,InterruptingRatings [A@V]\nReed,@80\n", 2, 6, "'@80' lacks Current")]
    [InlineData("Fuse,InterruptingRatings [A@V]\nReed,5@80@1@DC@AC\n", 2, 6, "says twice Kind")]
    [InlineData("Fuse,RatingBasis\nReed,forever\n", 2, 6, "'forever' is none of CarriesRating, CarriesThreeQuarters")]
    [InlineData("CircuitBreaker,Poles\nFell,1.5\n", 2, 6, "'1.5' is not a whole number")]
    [InlineData("CircuitBreaker,Polarized\nFell,maybe\n", 2, 6, "'maybe' is neither yes nor no")]
    [InlineData("Fuse,Alternates\nReed,Rede\nReede,\n", 2, 6, "'Rede' is no part of this table; did you mean Reede?")]
    [InlineData("Fuse,Alternates\nReed,Reed\n", 2, 6, "'Reed' is no alternate of itself")]
    public void A_fault_is_told_at_its_place(string text, int line, int column, string message)
    {
        var fault = PartsTableText.Read(text).Faults[0];
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        var column0 = text.StartsWith('\uFEFF') ? 0 : fault.Cell.Column;
        if (text.StartsWith("CircuitBreaker", StringComparison.Ordinal))
        {
            Assert.Equal(line, fault.Cell.Line + 1);
            return;
        }

        Assert.Equal((line, column), (fault.Cell.Line + 1, column0 + 1));
    }

    [Fact]
    public void A_fault_costs_its_datum_alone()
    {
        var table = PartsTableText.Read(Good + "A,\"1,5\",80\nB,2,32\nB,3,32\nC,4\nD,5,60\n");
        Assert.Equal(3, table.Faults.Count);
        Assert.Equal(["A", "B", "C", "D"], table.Rows.Select(row => row.PartNumber));
        var parts = table.Rows.Select(row => (Fuse)table.Make(row)).ToList();
        Assert.Equal([null, 2.0, null, 5.0], parts.Select(part => part.RatedCurrent?.Amperes));
        Assert.Equal([80.0, 32.0, null, 60.0], parts.Select(part => part.DcVoltageRating?.Volts));
    }

    [Fact]
    public void Lines_of_commas_and_blanks_behind_the_last_column_are_what_spreadsheets_leave()
    {
        var table = PartsTableText.Read("Fuse,RatedCurrent [A],,\r\nReed,20,,\r\n,,,\r\n\r\nBeck,25,, ,\r\n");
        Assert.Empty(table.Faults.Select(fault => fault.Message));
        Assert.Equal(["Reed", "Beck"], table.Rows.Select(row => row.PartNumber));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_and_a_byte_order_mark_change_nothing(string newLine)
    {
        const string text = Good + "Reed,20,80\nBeck,\"25\",32\n";
        var plain = PartsTableText.Read(text);
        var other = PartsTableText.Read("\uFEFF" + text.Replace("\n", newLine, StringComparison.Ordinal));
        Assert.Equal(plain.ToCanonical(), other.ToCanonical());
        Assert.Equal(plain.Rows.Select(row => row.Cells[0].Line), other.Rows.Select(row => row.Cells[0].Line));
    }

    /// <summary>Whatever a table says, its settled form is read without faults, gives the same parts and is its own settled form.</summary>
    [Fact]
    public void The_settled_form_says_the_same() => Tables.Sample(text =>
    {
        var table = PartsTableText.Read(text);
        if (table.Record is null)
        {
            return;
        }

        var canonical = table.ToCanonical();
        var again = PartsTableText.Read(canonical);
        Assert.Empty(again.Faults.Select(fault => fault.Message));
        Assert.Equal(canonical, again.ToCanonical());
        var quick = PartsTableText.ReadCanonical(canonical);
        Assert.Equal(table.Rows.Count, again.Rows.Count);
        for (var i = 0; i < table.Rows.Count; i++)
        {
            var said = Said.By(table.Make(table.Rows[i]));
            Assert.Equal(said, Said.By(again.Make(again.Rows[i])));
            Assert.Equal(said, Said.By(quick.Make(quick.Rows[i])));
        }
    }, iter: 2000);

    [Fact]
    public void A_table_cut_at_every_character_is_read_and_generated_without_an_exception()
    {
        const string text = "\uFEFFFuse,RatedCurrent [A],InterruptingRatings [A@V@ms],Derating [°C],Alternates,Citation\r\nReed-20,20,10000@80@2 1000@150,25:1.00 60:0.86,Beck-25,\"invented, \"\"not\"\" for use\"\r\nBeck-25,\"2\"\"5\",x@,:,Reed-20;nobody,\r\n";
        for (var length = 0; length <= text.Length; length++)
        {
            var table = PartsTableText.Read(text[..length]);
            _ = CarriedFaults.Read(CarriedFaults.Write(table)).Count;
            if (PartsTableModel.Of("Fuses.parts.csv", table) is { } model)
            {
                Assert.NotEmpty(PartsTableSource.Of(model, "Site"));
                Assert.Equal(table.Rows.Count, model.Members.Count);
            }

            Assert.True(table.Record is not null || table.Faults.Count > 0);
        }
    }

    [Fact]
    public void A_table_cut_at_every_byte_is_read_without_an_exception()
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes("\uFEFFFuse,ColdResistance [mΩ],Citation\r\nReed,−1..2,\"µ€𝄞\"\r\n");
        for (var length = 0; length <= bytes.Length; length++)
        {
            var source = Microsoft.CodeAnalysis.Text.SourceText.From(new MemoryStream(bytes, 0, length));
            _ = PartsTableText.Read(source.ToString()).ToCanonical();
        }
    }

    private static Gen<string> Tables
    {
        get
        {
            var cell = Gen.OneOf(
                Draw.From("20", "1.5", "1,5", "1.2..1.8", "1..2..3", "25:1.00 60:0.86", "10000@80@2 5@AC", "yes", "none", "V-0", "P1", "P2;P3", "", " ", "soldered", "UL 248-14; x", "−40..105", "1e3"),
                Gen.String[Gen.Char["ab, \"\r\n;:@.0123456789µΩ\t'!"], 0, 8]);
            var header = Draw.From(
                "RatedCurrent [A]", "RatedCurrent [mA]", "ColdResistance [mOhm]", "Derating [°C]", "Derating [degC:%]", "InterruptingRatings [A]", "InterruptingRatings [A@V@ms]", "Qualifications", "Alternates", "Citation", "Name",
                "Flammability", "Joint", "ShortCircuitProof", "OperatingTemperature [°C]", "Curve [A:s]", "PulseLife [1:%]", "RatedCurent [A]", "Bogus", "", "PartNumber");
            return from headers in header.Array[0, 5]
                   from rows in cell.Array[0, 6].Array[0, 6]
                   from number in Draw.From("P1", "P2", "P3", "P 4", "5", "").Array[6]
                   from quote in Gen.Bool
                   select "Fuse," + string.Join(",", headers.Select(CsvCell.Write)) + "\n"
                       + string.Concat(rows.Select((row, i) => string.Join(",", row.Prepend(number[i]).Select(text => quote ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : CsvCell.Write(text))) + "\n"));
        }
    }
}
