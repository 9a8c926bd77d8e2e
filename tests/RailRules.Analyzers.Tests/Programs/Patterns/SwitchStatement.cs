using System.Collections.Immutable;

namespace Programs.Patterns.SwitchStatement;

/// <summary>Patterns in case labels, default in the middle, several labels.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Results = [.. new object?[] { 0, 7, -1, "", "abc", null, 2.5, new[] { 1 } }.Select(Classify)];

    private static string Classify(object? value)
    {
        string result;
        switch (value)
        {
            case 0:
                return "zero";
            default:
                result = "other";
                break;
            case int n when n < 0:
            case string { Length: 0 }:
                result = "odd";
                break;
            case int n:
                result = "int" + n;
                break;
            case string s when s.Length > 2:
                result = s + "!";
                break;
            case null:
                result = "null";
                break;
            case double and > 2:
                goto case 0;
        }

        return result;
    }
}
