namespace Programs.Conversions.UserDefinedThenStandard;

/// <summary>A standard conversion before or after the user's own.</summary>
public static class P
{
    public static readonly long Long = new Count(7);
    public static readonly double Double = new Count(7);
    public static readonly Count FromByte = (byte)9;
    public static readonly Count FromChar = 'A';
    public static readonly object Boxed = (int)new Count(3);
    public static readonly int Sum = new Count(3) + 4;
    public static readonly bool Condition = new Count(0) ? true : false;
    public static readonly string Branch = new Count(2) ? "some" : "none";
}

public readonly struct Count(int value)
{
    private readonly int value = value;

    public int Value => value;

    public static implicit operator int(Count count) => count.value;

    public static implicit operator Count(int value) => new(value);

    public static implicit operator bool(Count count) => count.value != 0;
}
