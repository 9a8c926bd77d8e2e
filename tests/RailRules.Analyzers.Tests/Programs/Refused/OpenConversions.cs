// refused: where C# leaves the result of the conversion open
namespace Programs.Refused.OpenConversions;

/// <summary>A number too large for the integer: each runtime may give another value.</summary>
public static class P
{
    private static readonly double Large = 1e12;
    public static readonly int Refused = unchecked((int)Large);
    public static readonly long Long = (long)Large;
    public static readonly byte Byte = (byte)(Large / 5e9);
}
