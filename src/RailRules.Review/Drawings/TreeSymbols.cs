namespace RailRules.Review.Drawings;

/// <summary>Plain outlines of what stands in a supply tree, on a vertical line.</summary>
internal static class TreeSymbols
{
    internal static void Draw(SvgWriter svg, TreeSymbol symbol, double x, double y)
    {
        var at = $"{SvgWriter.Number(x)} {SvgWriter.Number(y)}";
        switch (symbol)
        {
            case TreeSymbol.Supply:
                svg.Circle(x, y, 8, "part");
                svg.Path($"M{at}m-4 -2h8m-8 4h2m1 0h2m1 0h2", "mark");
                break;
            case TreeSymbol.Battery:
                svg.Rectangle(x - 8, y - 8, 16, 16, "part", 2);
                svg.Path($"M{at}m-5 -3h10m-7.5 3h5m-7.5 3h10", "mark");
                break;
            case TreeSymbol.Converter:
                svg.Rectangle(x - 8, y - 8, 16, 16, "part");
                svg.Path($"M{at}m-8 8l16 -16", "mark");
                break;
            case TreeSymbol.Rail:
                svg.Circle(x, y, 3.5, "joint");
                break;
            case TreeSymbol.Fuse:
                svg.Rectangle(x - 5, y - 9, 10, 18, "part");
                svg.Path($"M{at}m0 -9v18", "mark");
                break;
            case TreeSymbol.Breaker:
                svg.Rectangle(x - 7, y - 9, 14, 18, "part");
                svg.Path($"M{at}m0 -9v4m0 10v4m-4 -12l4 7", "mark");
                break;
            case TreeSymbol.Resettable:
                svg.Rectangle(x - 5, y - 9, 10, 18, "part");
                svg.Path($"M{at}m-8 6h3l10 -12h3", "mark");
                break;
            case TreeSymbol.Electronic:
                svg.Rectangle(x - 8, y - 9, 16, 18, "part", 3);
                svg.Path($"M{at}m-4 -4l4 4l4 -4m-8 5l4 4l4 -4", "mark");
                break;
            case TreeSymbol.Conductors:
                break;
            case TreeSymbol.Clamp:
                svg.Path($"M{at}m0 0l10 -5v10zm0 -5v10", "part");
                break;
            case TreeSymbol.Capacitor:
                svg.Path($"M{at}m2 -6v12m4 -12v12", "mark");
                break;
            case TreeSymbol.Load:
                svg.Path($"M{at}m0 -5.5l9 5.5l-9 5.5z", "part");
                break;
            default:
                svg.Path($"M{at}m-1 -4l5 4l-5 4", "mark");
                break;
        }
    }
}
