namespace RailRules.Review.Drawings;

/// <summary>How wide text is: the page measures none, so that it is the same on every machine. Widths of a common sans serif face, with some room for others.</summary>
internal static class TextWidth
{
    /// <summary>Thousandths of the font size, from space to tilde.</summary>
    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    private const double Room = 1.13, BoldRoom = 1.25;

    /// <summary>The width of a text in pixels of the drawing.</summary>
    internal static double Of(string text, double size, bool bold = false)
    {
        double sum = 0;
        foreach (var c in text)
        {
            sum += c is >= ' ' and <= '~' ? Widths[c - ' '] : c < 0x500 ? 600 : char.IsLowSurrogate(c) ? 0 : 1000;
        }

        return sum / 1000 * size * (bold ? BoldRoom : Room);
    }

    /// <summary>As much of a text as fits, with an ellipsis where some is left out.</summary>
    internal static string Fit(string text, double width, double size, bool bold = false)
    {
        // Longer than any drawing is wide.
        var shown = text.Length > 400 ? text[..400] : text;
        if (shown.Length == text.Length && Of(shown, size, bold) <= width)
        {
            return shown;
        }

        var length = shown.Length;
        while (length > 1 && Of(shown[..length] + "…", size, bold) > width)
        {
            length--;
        }

        length -= char.IsHighSurrogate(shown[length - 1]) ? 1 : 0;
        return shown[..length].TrimEnd() + "…";
    }
}
