namespace Programs.Chars.CharArithmetic;

/// <summary>Characters are numbers when computed with.</summary>
public static class P
{
    private static readonly char Letter = 'c';
    public static readonly int Offset = Letter - 'a';
    public static readonly int Sum = Letter + 1;
    public static readonly char Next = (char)(Letter + 1);
    public static readonly object Type = Letter + Letter;
    public static readonly bool Compared = Letter is >= 'a' and <= 'z';
    public static readonly int Code = Letter;
    public static readonly string Text = "" + Letter + 1;
    public static readonly string Summed = 'a' + 'b' + "c";
    public static readonly string FromChars = new(['x', 'y', 'z']);
    public static readonly int Digit = '7' - '0';
    public static readonly ushort AsUshort = Letter;
}
