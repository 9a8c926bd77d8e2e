using System.Globalization;

namespace Programs.Throws.InOtherClass;

/// <summary>The initialiser of another class throws.</summary>
public static class P
{
    public static int Value => Other.Value + 1;
}

public static class Other
{
    public static readonly int Value = int.Parse("none", CultureInfo.InvariantCulture);
}
