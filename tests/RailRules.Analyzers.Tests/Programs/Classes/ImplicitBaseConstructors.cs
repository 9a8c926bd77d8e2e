namespace Programs.Classes.ImplicitBaseConstructors;

/// <summary>A base constructor whose parameters are all optional is called without arguments.</summary>
public static class P
{
    public static readonly string A = new Implicit().Text;
    public static readonly string B = new Explicit(4).Text;
    public static readonly string C = new Chained().Text;
}

public enum Kind
{
    None,
    Special = 7,
}

public abstract class Base
{
    protected Base(int number = 5, Kind kind = Kind.Special, string? name = null, double? limit = 2.5) => Text = $"{number} {kind} {name ?? "-"} {limit}";

    public string Text { get; protected set; }
}

public sealed class Implicit : Base
{
    private readonly int extra = 3;

    public int Extra => extra;
}

public class Explicit : Base
{
    public Explicit(int more) => Text += " " + more;
}

public sealed class Chained : Explicit
{
    public Chained()
        : base(9)
    {
    }
}
