using System.Collections.Immutable;

namespace Programs.Strings.Palindrome;

/// <summary>Comparing from both ends.</summary>
public static class P
{
    public static readonly ImmutableArray<bool> Results = [.. new[] { "level", "Rotor", "fuse", "", "a b a" }.Select(IsPalindrome)];

    private static bool IsPalindrome(string text)
    {
        for (int i = 0, j = text.Length - 1; i < j; i++, j--)
        {
            if (char.ToLowerInvariant(text[i]) != char.ToLowerInvariant(text[j]))
                return false;
        }

        return true;
    }
}
