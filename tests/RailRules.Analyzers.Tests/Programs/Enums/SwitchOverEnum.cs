using System.Collections.Immutable;

namespace Programs.Enums.SwitchOverEnum;

/// <summary>Switch statement and switch expression over an enumeration.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Factors = [.. new[] { Mount.Open, Mount.Boxed, Mount.Potted, (Mount)7 }.Select(Factor)];
    public static readonly ImmutableArray<string> Words = [.. new[] { Mount.Open, Mount.Boxed, Mount.Potted, (Mount)7 }.Select(Word)];

    private static double Factor(Mount mount) => mount switch
    {
        Mount.Open => 1.0,
        Mount.Boxed => 0.9,
        Mount.Potted => 0.75,
        _ => double.NaN,
    };

    private static string Word(Mount mount)
    {
        switch (mount)
        {
            case Mount.Open:
                return "air";
            case Mount.Boxed:
            case Mount.Potted:
                return "closed " + mount;
            default:
                return "?" + (int)mount;
        }
    }
}

public enum Mount
{
    Open,
    Boxed,
    Potted,
}
