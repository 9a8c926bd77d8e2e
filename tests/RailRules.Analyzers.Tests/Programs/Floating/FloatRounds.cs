using System.Globalization;

namespace Programs.Floating.FloatRounds;

/// <summary>Float arithmetic rounds to 24 bits at every step.</summary>
public static class P
{
    private static readonly float Tenth = 0.1f;
    private static readonly float Big = 16_777_216f;
    public static readonly float Sum = Tenth + 0.2f;
    public static readonly double Widened = Tenth;
    public static readonly float Lost = Big + 1;
    public static readonly float Kept = Big + 2;
    public static readonly double InDouble = Big + 1d;
    public static readonly float Product = Tenth * 3;
    public static readonly bool EqualsDouble = Tenth == 0.1;
    public static readonly float FromInt = 123_456_789;
    public static readonly string Text = Tenth.ToString(CultureInfo.InvariantCulture);
    public static readonly string Long = ((double)Tenth).ToString(CultureInfo.InvariantCulture);
}
