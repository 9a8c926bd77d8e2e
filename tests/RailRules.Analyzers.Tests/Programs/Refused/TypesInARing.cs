// refused: use each other
namespace Programs.Refused.TypesInARing;

/// <summary>A ring over three types, of which no single member leads back to itself.</summary>
public static class P
{
    public static readonly int Refused = One.Late;
}

public static class One
{
    public static readonly int Early = Two.Early;
    public static readonly int Late = 5 + Two.Late;
}

public static class Two
{
    public static readonly int Early = 7;
    public static readonly int Late = Three.Value;
}

public static class Three
{
    public static readonly int Value = One.Early + 1;
}
