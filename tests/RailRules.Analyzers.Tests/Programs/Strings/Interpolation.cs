namespace Programs.Strings.Interpolation;

/// <summary>Alignment, format and nesting in interpolated strings.</summary>
public static class P
{
    private static readonly double Value = 1234.5678;
    private static readonly int Slot = 7;
    public static readonly string Plain = $"slot {Slot}";
    public static readonly string Aligned = $"|{Slot,5}|{Slot,-5}|";
    public static readonly string Formatted = $"{Value:0.00}|{Value:N1}|{Value:E2}";
    public static readonly string Both = $"|{Value,12:F1}|";
    public static readonly string Hex = $"{Slot:X4} {255:x}";
    public static readonly string Nested = $"{(Slot > 5 ? $"high {Slot}" : "low")}";
    public static readonly string Null = $"<{(string?)null}>";
    public static readonly string Bool = $"{Slot == 7}";
    public static readonly string Expression = $"{Slot * 2 + 1} {Slot switch { 7 => "seven", _ => "?" }}";
    public static readonly string Designator = $"F{10 + Slot}";
    public static readonly string Tuple = $"{(Slot, 'x')}";
    public static readonly string Verbatim = $@"{Slot}\{Slot}";
    public const string Constant = $"{nameof(Slot)}!";
}
