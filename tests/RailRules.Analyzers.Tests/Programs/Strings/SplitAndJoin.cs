using System.Globalization;

namespace Programs.Strings.SplitAndJoin;

/// <summary>Splitting with options, joining sequences.</summary>
public static class P
{
    public static readonly string[] Parts = "10;20;;30".Split(';');
    public static readonly string[] NoEmpty = "10;20;;30".Split(';', StringSplitOptions.RemoveEmptyEntries);
    public static readonly string[] Trimmed = " a , b ".Split(',', StringSplitOptions.TrimEntries);
    public static readonly string[] Limited = "a=b=c".Split('=', 2);
    public static readonly string[] ByText = "a<>b<>c".Split("<>");
    public static readonly string[] Several = "a,b;c".Split([',', ';']);
    public static readonly string Joined = string.Join(", ", new[] { 1, 2, 3 });
    public static readonly string JoinedObjects = string.Join('-', 1, "x", 2.5);
    public static readonly string JoinedNulls = string.Join('|', "a", null, "c");
    public static readonly int Sum = "10;20;30".Split(';').Sum(p => int.Parse(p, CultureInfo.InvariantCulture));
}
