namespace Programs.Throws.TypeInitialiser;

/// <summary>Where one initialiser of a type throws, nothing of the type can be read.</summary>
public static class P
{
    public static int Before => Broken.Fine;

    public static int After => Broken.Later + 1;

    public static int Through => Uses.Value;
}

public static class Broken
{
    public static readonly int Fine = 1;
    public static readonly int Thrower = Fail();
    public static readonly int Later = 2;

    private static int Fail() => throw new InvalidOperationException("No value.");
}

public static class Uses
{
    public static readonly int Value = Broken.Fine;
}
