// refused: static members do not change once they have their value
namespace Programs.Refused.ReadonlyStatic;

/// <summary>An initialiser may change a read-only struct of its own type where it stands.</summary>
public static class P
{
    private static readonly Counter Fixed = new();
    public static readonly string Refused = $"{Fixed.Up()} {Fixed.Up()}";
}

public struct Counter
{
    private int value;

    public int Up() => ++value;
}
