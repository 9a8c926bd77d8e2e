using RailRules;

namespace Programs.Boards.Returns;

/// <summary>Mirrored, made of elements, known by resistance, absent.</summary>
public static class P
{
    private static readonly Wire Black = new() { Length = 3.Meters(), Section = 6.SquareMillimeters() };
    public static readonly Rail Mirrored = new() { Return = Return.Mirrored, Path = [Black] };
    public static readonly Rail Own = new() { Return = Return.Of(Black, new Connector { Contacts = 2 }) };
    public static readonly Rail Known = new() { Return = Return.OfResistance(Band.Of(1.Milliohms(), 2.Milliohms())) };
    public static readonly Rail Unknown = new();
    public static readonly bool SameReturn = ReferenceEquals(Mirrored.Return, Return.Mirrored);
    public static readonly int Elements = Own.Return!.Elements.Length;
}
