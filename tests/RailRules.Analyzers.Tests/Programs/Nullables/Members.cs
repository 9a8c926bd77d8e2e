namespace Programs.Nullables.Members;

/// <summary>Value, has value, default, equals and text.</summary>
public static class P
{
    private static readonly int? Five = 5;
    private static readonly int? None = null;
    public static readonly bool Has = Five.HasValue;
    public static readonly int Value = Five.Value;
    public static readonly int Default = None.GetValueOrDefault();
    public static readonly int Given = None.GetValueOrDefault(9);
    public static readonly string Text = Five.ToString()! + "|" + None.ToString() + "|";
    public static readonly bool EqualsFive = Five.Equals(5);
    public static readonly bool NoneEqualsNull = None.Equals(null);
    public static readonly string Interpolated = $"<{None}{Five,4}>";
    public static readonly int Compared = Nullable.Compare(Five, None);
    public static readonly object? Boxed = None;
}
