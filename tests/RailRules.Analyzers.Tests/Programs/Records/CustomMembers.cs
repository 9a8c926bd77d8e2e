using System.Text;

namespace Programs.Records.CustomMembers;

/// <summary>Records that write their own equality, text and members.</summary>
public static class P
{
    public static readonly bool Equal = new Label("Abc") == new Label("aBC");
    public static readonly string Text = new Label("Abc").ToString();
    public static readonly string Printed = new Described("x", 3).ToString();
    public static readonly int Length = new Label("Abc").Length;
    public static readonly Label Combined = new Label("a") + new Label("b");
}

public sealed record Label(string Value)
{
    public int Length => Value.Length;

    public static Label operator +(Label a, Label b) => new(a.Value + b.Value);

    public bool Equals(Label? other) => string.Equals(Value, other?.Value, StringComparison.OrdinalIgnoreCase);

    public override int GetHashCode() => 1;

    public override string ToString() => $"'{Value}'";
}

public record Described(string Name, int Count)
{
    protected virtual bool PrintMembers(System.Text.StringBuilder builder)
    {
        builder.Append("N=").Append(Name).Append('*').Append(Count);
        return true;
    }
}
