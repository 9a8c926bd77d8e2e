namespace RailRules.Review.Tests;

/// <summary>Where the repository is and how it was built.</summary>
internal static class Repository
{
#if DEBUG
    public const string Configuration = "Debug";
#else
    public const string Configuration = "Release";
#endif

    /// <summary>The folder with RailRules.sln.</summary>
    public static string Root { get; } = Find();

    public static string Sample(string name) => Path.Combine(Root, "samples", name, name + ".csproj");

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "RailRules.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("No folder above the tests has RailRules.sln.");
        }

        return folder.FullName;
    }
}
