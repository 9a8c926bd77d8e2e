namespace Programs.Enums.Flags;

/// <summary>Combinations, tests and text.</summary>
public static class P
{
    public static readonly Features Both = Features.Fused | Features.HotSwap;
    public static readonly string BothText = (Features.Fused | Features.HotSwap).ToString();
    public static readonly string AllText = Features.All.ToString();
    public static readonly string NoneText = Features.None.ToString();
    public static readonly string UnknownText = ((Features)64).ToString();
    public static readonly string MixedText = ((Features)65).ToString();
    public static readonly bool Has = Features.All.HasFlag(Features.Redundant);
    public static readonly bool Masked = (Features.All & ~Features.Fused) == (Features.HotSwap | Features.Redundant);
    public static readonly Features Toggled = Features.All ^ Features.HotSwap;
    public static readonly int Bits = (int)(Features.Fused | Features.Redundant);
    public static readonly Features Complement = ~Features.Fused & Features.All;
}

[Flags]
public enum Features
{
    None = 0,
    Fused = 1,
    HotSwap = 2,
    Redundant = 4,
    All = Fused | HotSwap | Redundant,
}
