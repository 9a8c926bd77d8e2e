using System.Globalization;
using System.Net;
using System.Text;

namespace RailRules.Review.Drawings;

/// <summary>Writes the elements of an SVG picture; numbers with two decimals and a point, text escaped. Colours and dashes are the style sheet's, by class.</summary>
internal sealed class SvgWriter
{
    private readonly StringBuilder text = new();

    /// <summary>What has been written.</summary>
    public override string ToString() => text.ToString();

    /// <summary>Begins the picture, with its title and description for readers who do not see it.</summary>
    internal void Begin(string id, string css, double width, double height, string title, string description, double top = 0)
    {
        text.Append($"<svg class=\"{css}\" viewBox=\"0 {Number(top)} {Number(width)} {Number(height)}\" role=\"img\" aria-labelledby=\"{id}-t {id}-d\">")
            .Append($"<title id=\"{id}-t\">{Escaped(title)}</title><desc id=\"{id}-d\">{Escaped(description)}</desc>");
    }

    internal void End() => text.Append("</svg>");

    internal void Raw(string markup) => text.Append(markup);

    internal void Group(string attributes) => text.Append($"<g {attributes}>");

    internal void EndGroup() => text.Append("</g>");

    internal void Path(string data, string css) => text.Append($"<path class=\"{css}\" d=\"{data}\"/>");

    internal void Line(double x1, double y1, double x2, double y2, string css) => Path($"M{Number(x1)} {Number(y1)}L{Number(x2)} {Number(y2)}", css);

    internal void Rectangle(double x, double y, double width, double height, string css, double radius = 0) =>
        text.Append($"<rect class=\"{css}\" x=\"{Number(x)}\" y=\"{Number(y)}\" width=\"{Number(width)}\" height=\"{Number(height)}\"{(radius > 0 ? $" rx=\"{Number(radius)}\"" : "")}/>");

    internal void Circle(double x, double y, double radius, string css) =>
        text.Append($"<circle class=\"{css}\" cx=\"{Number(x)}\" cy=\"{Number(y)}\" r=\"{Number(radius)}\"/>");

    /// <summary>A text; where it was cut, the whole is its tool tip.</summary>
    internal void Text(double x, double y, string shown, string css = "", string anchor = "", string? whole = null)
    {
        if (shown.Length == 0)
        {
            return;
        }

        text.Append($"<text x=\"{Number(x)}\" y=\"{Number(y)}\"");
        if (css.Length > 0)
        {
            text.Append($" class=\"{css}\"");
        }

        if (anchor.Length > 0)
        {
            text.Append($" text-anchor=\"{anchor}\"");
        }

        text.Append('>');
        if (whole is not null && whole != shown)
        {
            text.Append($"<title>{Escaped(Shown.Short(whole, 300))}</title>");
        }

        text.Append(Escaped(shown)).Append("</text>");
    }

    internal static string Number(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    internal static string Escaped(string value) => WebUtility.HtmlEncode(Shown.Text(value));
}
