using System.Globalization;
using RailRules;

namespace Programs.Boards.ReportLines;

/// <summary>Lines of a report with aligned columns.</summary>
public static class P
{
    private static readonly (string Part, double Margin)[] Lines = [("F1", 1.305), ("F10", 12.5), ("Q2", 0.98765)];
    public static readonly string Report = string.Join('\n', Lines.Select(line => string.Format(CultureInfo.InvariantCulture, "{0,-5}|{1,8:0.00} ×", line.Part, line.Margin)));
    public static readonly int Width = Lines.Max(line => line.Part.Length);
    public static readonly string Padded = string.Concat(Lines.Select(line => line.Part.PadRight(Lines.Max(l => l.Part.Length) + 1)));
    public static readonly Rail Worst = new() { Name = Lines.MinBy(line => line.Margin).Part };
}
