using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.TraceWidths;

/// <summary>Copper area and current of traces by the IPC-2221 formula.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Currents = [.. new[] { 1, 2, 5, 10.0 }.Select(width => Math.Round(Ampacity(width, 0.035, 20, inner: false), 4))];
    public static readonly double Inner = Math.Round(Ampacity(5, 0.07, 20, inner: true), 4);
    public static readonly Trace Wide = new() { Length = 80.Millimeters(), Width = 5.Millimeters(), Thickness = 70.Micrometers(), Inner = false, Ampacity = Ampacity(5, 0.07, 20, inner: false).Amperes() };

    private static double Ampacity(double widthMillimeters, double thicknessMillimeters, double rise, bool inner)
    {
        const double mil = 0.0254;
        var area = widthMillimeters * thicknessMillimeters / (mil * mil);
        return (inner ? 0.024 : 0.048) * Math.Pow(rise, 0.44) * Math.Pow(area, 0.725);
    }
}
