// refused: File
namespace Programs.Refused.Files;

/// <summary>Reading a file.</summary>
public static class P
{
    public static string Refused => File.ReadAllText("parts.csv");
}
