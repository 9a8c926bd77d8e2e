namespace Programs.Chars.Escapes;

/// <summary>Escapes, verbatim, raw and interpolated raw strings.</summary>
public static class P
{
    public static readonly string Escaped = "tab\tquote\"back\\slash\u00B2\x41";
    public static readonly string Verbatim = @"c:\parts ""x"" 
    second";
    public static readonly string Raw = """
        {
          "fuse": "F1"
        }
        """;
    public static readonly string RawInterpolated = $$"""{"slot": {{3 + 4}}, "braces": {} }""";
    public static readonly string Braces = $"{{literal}} {1 + 1}";
    public static readonly char Quote = '\'';
    public static readonly char Escape = '\u03A9';
    public static readonly int Length = "Ω²".Length;
    public static readonly string Surrogates = "\U0001F50C";
    public static readonly int SurrogateLength = "\U0001F50C".Length;
}
