namespace Programs.Classes.StaticChains;

/// <summary>Statics of several classes that read each other, in an order that is the same wherever the program begins.</summary>
public static class P
{
    public static readonly int First = Other.Start + 1;
    public static readonly int Second = First + Other.FromFirst;
    public static readonly string Text = Far.Text;
    public static readonly int FromInner = Inner.Twice;

    public static int Shared => Inner.Shared;

    public static class Inner
    {
        public static readonly int Twice = Far.Zero * 2;
        public static readonly int Shared = Base + 1;
    }

    public static readonly int Base;
}

public static class Other
{
    public static readonly int Start = Far.Zero + 10;

    public static int FromFirst => P.First * 2;
}

public static class Far
{
    public static readonly int Zero = 100;

    public static readonly string Text = $"{Zero} {nameof(Far)}";
}
