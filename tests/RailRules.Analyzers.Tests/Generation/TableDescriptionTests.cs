using System.Text.Encodings.Web;
using System.Text.Json;
using RailRules.Tables;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>docs/parts-tables.json describes every column for programs; it is made from the model, and this test keeps it true.</summary>
public sealed class TableDescriptionTests
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, PropertyNamingPolicy = JsonNamingPolicy.CamelCase, NewLine = "\n" };

    [Fact]
    public void The_description_is_the_model_s()
    {
        var description = new
        {
            Description = "The columns of *.parts.csv tables: for each record that the first header cell may name, the data that the other header cells may name, with the units in which they may be stated. See parts-tables.md.",
            Version = 1,
            Records = TableRecord.All.Select(record => new
            {
                record.Name,
                Columns = record.Columns.Select(column => new
                {
                    column.Name,
                    column.Shape.Form,
                    Units = column.Shape.Scalars.Where(scalar => scalar.Units.Length > 0).Select(scalar => string.Join(" ", scalar.Units.Select(unit => unit.Symbol))),
                    UnitRequired = column.Shape.Scalars is [{ NeedsUnit: true }, ..],
                }),
            }),
        };
        var expected = JsonSerializer.Serialize(description, Options) + "\n";
        var file = Path.Combine(AppContext.BaseDirectory, "Docs", "parts-tables.json");
        if (!File.Exists(file) || File.ReadAllText(file) != expected)
        {
            var fresh = Path.Combine(AppContext.BaseDirectory, "parts-tables.json");
            File.WriteAllText(fresh, expected);
            Assert.Fail("docs/parts-tables.json does not describe the model any more; copy " + fresh + " there.");
        }
    }

    /// <summary>Each example of a table in the page is read without a fault.</summary>
    [Fact]
    public void Examples_of_the_page_are_read()
    {
        var page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "parts-tables.md"));
        var blocks = page.Split("```").Where((block, i) => i % 2 == 1 && block.StartsWith("csv\n", StringComparison.Ordinal)).Select(block => block[4..]).ToList();
        Assert.True(blocks.Count >= 3);
        Assert.All(blocks, block => Assert.Empty(PartsTableText.Read(block).Faults.Select(fault => fault.Message)));
    }
}
