namespace Programs.Classes.StaticChains;

/// <summary>Statics of several classes that read each other, lazily.</summary>
public static class P
{
    public static readonly int First = Other.Start + 1;
    public static readonly int Second = First + Other.FromFirst;
    public static readonly string Text = Far.Text;
}

public static class Other
{
    public static readonly int Start = Far.Zero + 10;

    public static int FromFirst => P.First * 2;
}

public static class Far
{
    public static readonly int Zero = 100;

    public static readonly string Text = $"{Zero} {Other.Start} {nameof(Far)}";
}
