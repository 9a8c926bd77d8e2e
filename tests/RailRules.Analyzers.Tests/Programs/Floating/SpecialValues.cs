namespace Programs.Floating.SpecialValues;

/// <summary>Infinities and not-a-number.</summary>
public static class P
{
    private static readonly double Zero = 0;
    public static readonly double Infinity = 1 / Zero;
    public static readonly double NegativeInfinity = -1 / Zero;
    public static readonly double NotANumber = Zero / Zero;
    public static readonly bool EqualToItself = NotANumber == NotANumber;
    public static readonly bool UnequalToItself = NotANumber != NotANumber;
    public static readonly bool ByEquals = NotANumber.Equals(NotANumber);
    public static readonly bool Less = NotANumber < 1;
    public static readonly bool NotLess = !(NotANumber >= 1);
    public static readonly bool IsNaN = double.IsNaN(NotANumber);
    public static readonly bool SignOfZero = 1 / -Zero == double.NegativeInfinity;
    public static readonly double MaxWithNaN = Math.Max(NotANumber, 1);
    public static readonly int Compared = NotANumber.CompareTo(1.0);
    public static readonly double[] Sorted = [.. new[] { 2, NotANumber, Infinity, -1, NegativeInfinity }.Order()];
}
