using System.Collections.Immutable;

namespace Programs.Chars.CharClasses;

/// <summary>Classes and cases of characters.</summary>
public static class P
{
    public static readonly ImmutableArray<bool> Digits = [.. "a1 ,Z".Select(char.IsDigit)];
    public static readonly ImmutableArray<bool> Letters = [.. "a1 ,Z".Select(char.IsLetter)];
    public static readonly ImmutableArray<bool> Spaces = [.. "a1 ,Z".Select(char.IsWhiteSpace)];
    public static readonly string Upper = string.Concat("f1-b".Select(char.ToUpperInvariant));
    public static readonly char Lower = char.ToLowerInvariant('Q');
    public static readonly double Numeric = char.GetNumericValue('8');
    public static readonly bool Hex = char.IsAsciiHexDigit('f') && !char.IsAsciiHexDigit('g');
    public static readonly bool Between = char.IsBetween('m', 'a', 'z');
}
