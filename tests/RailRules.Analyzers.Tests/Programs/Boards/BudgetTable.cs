using System.Globalization;
using System.Text;
using RailRules;

namespace Programs.Boards.BudgetTable;

/// <summary>Rail after rail in a table of text.</summary>
public static class P
{
    private static readonly (string Rail, double Volts, double Amperes)[] Rails = [("3V3", 3.3, 12), ("5V", 5, 4.25), ("12V", 12, 30)];
    public static readonly string Table = Write();
    public static readonly double Watts = Rails.Sum(r => r.Volts * r.Amperes);

    private static string Write()
    {
        var text = new StringBuilder();
        text.Append("rail      V      A       W\n");
        foreach (var (rail, volts, amperes) in Rails)
            text.Append(CultureInfo.InvariantCulture, $"{rail,-5}{volts,6:0.0}{amperes,7:0.00}{volts * amperes,8:0.0}").Append('\n');
        return text.ToString();
    }
}
