namespace Programs.Arithmetic.ConstantsFold;

/// <summary>Constant expressions fold as the compiler says.</summary>
public static class P
{
    public const int Slots = 8;
    public const int PerSlot = 3 + 2 * Slots;
    public const double Ratio = Slots / 3;
    public const double RealRatio = Slots / 3.0;
    public const string Label = "slots: " + nameof(Slots);
    public const bool Many = Slots > 4 && PerSlot != 0;
    public const char Mark = (char)('A' + Slots);
    public const decimal Price = 1.10m * 3;
    public const long Bits = 1L << Slots * 4;
    public const int Unchecked = unchecked(int.MaxValue + 1);
    public static readonly int Used = Slots * PerSlot;
}
