// refused: the initialisers of 'Other' and 'Far' use each other
namespace Programs.Refused.TypesReadEachOther;

/// <summary>What Far reads of Other depends on which of the two is touched first.</summary>
public static class P
{
    public static readonly int Start = Other.Start + 1;
    public static readonly string Refused = Far.Text;
}

public static class Other
{
    public static readonly int Start = Far.Zero + 10;
}

public static class Far
{
    public static readonly int Zero = 100;

    public static readonly string Text = $"{Zero} {Other.Start} {nameof(Far)}";
}
