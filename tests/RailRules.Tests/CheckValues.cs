using System.Globalization;
using System.Text;

namespace RailRules.Tests;

/// <summary>
/// The rows of tests/Reference/check-values.csv: published or textbook values with their source beside them in the row. Each family of computations compares its
/// rows in a partial file of its own; the row's id is the first argument.
/// </summary>
public partial class CheckValues
{
    private static readonly Dictionary<string, Row> Rows = Read();

    private static void Check(string id, double value)
    {
        var row = Rows[id];
        var tolerance = Math.Max(row.Tolerance * Math.Abs(row.Expected), 1e-12 * Math.Abs(row.Expected));
        Assert.True(
            Math.Abs(value - row.Expected) <= tolerance,
            string.Create(CultureInfo.InvariantCulture, $"{id}: {row.Quantity} is {value:R}; {row.Source}, {row.Section} says {row.Expected:R} {row.Unit}"));
    }

    private static Dictionary<string, Row> Read() =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "check-values.csv")).Skip(1).Where(line => line.Length > 0)
            .Select(Cells)
            .ToDictionary(
                cells => cells[0],
                cells => new Row(cells[2], Number(cells[4]), cells[5], Number(cells[6]), cells[7], cells[8], cells[3]),
                StringComparer.Ordinal);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var character in line)
        {
            if (character == '"')
                quoted = !quoted;
            else if (character == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
                cell.Append(character);
        }

        cells.Add(cell.ToString());
        return cells;
    }

    /// <summary>A row: what, how much, in which unit, how near, by which source. Inputs stand as "name=value; ...".</summary>
    private sealed record Row(string Quantity, double Expected, string Unit, double Tolerance, string Source, string Section, string Inputs)
    {
        /// <summary>An input of the row by its name.</summary>
        public double this[string name] => Number(Inputs.Split(';').Select(part => part.Trim()).Single(part => part.StartsWith(name + "=", StringComparison.Ordinal)).Substring(name.Length + 1));
    }
}
