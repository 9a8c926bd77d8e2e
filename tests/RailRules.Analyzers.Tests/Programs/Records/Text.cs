namespace Programs.Records.Text;

/// <summary>The text of records with fields, nested records, nulls and collections.</summary>
public static class P
{
    public static readonly string Nested = new Outer(new Inner(1, null), 2.5m, 'x').ToString();
    public static readonly string Fields = new WithFields { A = 1, B = "b" }.ToString();
    public static readonly string Empty = new Nothing().ToString();
    public static readonly string Generic = new Pair<int, string>(1, "one").ToString();
    public static readonly string Struct = new Point(1, -2).ToString();
    public static readonly string Interpolated = $"<{new Inner(3, "t")}>";
    public static readonly string Bool = new Flags(true, null, DayOfWeek.Friday).ToString();
}

public sealed record Inner(int A, string? B);

public sealed record Outer(Inner Part, decimal Price, char Mark);

public sealed record WithFields
{
    public int A;
    public string? B;
    private readonly int hidden = 5;

    public int Computed => hidden + A;
}

public sealed record Nothing;

public sealed record Pair<TA, TB>(TA First, TB Second);

public readonly record struct Point(int X, int Y);

public sealed record Flags(bool On, int? Count, DayOfWeek Day);
