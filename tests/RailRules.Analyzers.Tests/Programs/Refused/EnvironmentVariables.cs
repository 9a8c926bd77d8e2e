// refused: Environment
namespace Programs.Refused.EnvironmentVariables;

/// <summary>Reading the environment.</summary>
public static class P
{
    public static string? Refused => Environment.GetEnvironmentVariable("HOME");
}
