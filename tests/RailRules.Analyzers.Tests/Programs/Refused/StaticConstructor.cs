// refused: static constructor
namespace Programs.Refused.StaticConstructor;

/// <summary>A type with a static constructor.</summary>
public static class P
{
    public static int Refused => Counter.Start;
}

public static class Counter
{
    public static readonly int Start;

    static Counter() => Start = 5;
}
