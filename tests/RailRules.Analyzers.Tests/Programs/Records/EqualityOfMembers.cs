using System.Collections.Immutable;

namespace Programs.Records.EqualityOfMembers;

/// <summary>Doubles, nulls, arrays and nested records in equality.</summary>
public static class P
{
    public static readonly bool NaN = new Value(double.NaN, null) == new Value(double.NaN, null);
    public static readonly bool Zero = new Value(0.0, null) == new Value(-0.0, null);
    public static readonly bool Null = new Value(1, null) == new Value(1, "x");
    public static readonly bool Array = new Holder([1]) == new Holder([1]);
    public static readonly bool Nested = new Wrap(new Value(1, "a")) == new Wrap(new Value(1, "a"));
    public static readonly bool Immutable = new Fixed([1, 2]) == new Fixed([1, 2]);
    public static readonly bool Nothing = (Value?)null == null && new Value(1, null) != null;
}

public sealed record Value(double Number, string? Text);

public sealed record Holder(int[] Items);

public sealed record Wrap(Value Inner);

public sealed record Fixed(ImmutableArray<int> Items);
