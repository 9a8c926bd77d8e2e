namespace Programs.Chars.Caesar;

/// <summary>A substitution over characters.</summary>
public static class P
{
    public static readonly string Coded = Shift("Fuse 10 A!", 3);
    public static readonly string Decoded = Shift(Coded, -3);

    private static string Shift(string text, int by)
    {
        var letters = new char[text.Length];
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            letters[i] = c switch
            {
                >= 'a' and <= 'z' => (char)('a' + (c - 'a' + by + 26) % 26),
                >= 'A' and <= 'Z' => (char)('A' + (c - 'A' + by + 26) % 26),
                _ => c,
            };
        }

        return new string(letters);
    }
}
