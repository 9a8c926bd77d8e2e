// refused: using
namespace Programs.Refused.Using;

/// <summary>Using declarations.</summary>
public static class P
{
    public static string? Refused => Run();

    private static string? Run()
    {
        using var reader = new StringReader("text");
        return reader.ReadLine();
    }
}
