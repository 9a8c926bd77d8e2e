namespace Programs.Functions.OptionalAndNamed;

/// <summary>Defaults of every kind, named arguments in any order.</summary>
public static class P
{
    public static readonly string All = Describe();
    public static readonly string Some = Describe(length: 3, name: "W2");
    public static readonly string Positional = Describe("W3", 4, copper: false);
    public static readonly string Null = Describe(null);
    public static readonly string EnumDefault = Kind();
    public static readonly double NullableDefault = Scale(2) + Scale(2, null) + Scale(2, 5);
    public static readonly string StructDefault = Struct();

    private static string Describe(string? name = "W1", double length = 1.5, bool copper = true) => $"{name ?? "null"} {length} {copper}";

    private static string Kind(DayOfWeek day = DayOfWeek.Friday, char mark = '#', decimal price = 1.20m) => $"{day}{mark}{price}";

    private static double Scale(double value, double? factor = null) => value * (factor ?? 10);

    private static string Struct((int, string) pair = default, TimeSpan span = default) => $"{pair} {span.TotalSeconds}";
}
