// newest compiler only
namespace Programs.Extensions14.Calls;

/// <summary>Extension members called as static methods and through conditional access.</summary>
public static class P
{
    public static readonly int? Length = Absent()?.Doubled;
    public static readonly string Static = Extras.Shout("a");
    public static readonly string Instance = "b".Shout();
    public static readonly int Count = Extras.get_Doubled("abc");

    private static string? Absent() => null;
}

public static class Extras
{
    extension(string text)
    {
        public int Doubled => text.Length * 2;

        public string Shout() => text + "!";
    }
}
