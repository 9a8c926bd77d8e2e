namespace RailRules.Package.Tests;

/// <summary>Where the repository is and how it was built.</summary>
internal static class Repository
{
    /// <summary>The folder with RailRules.sln.</summary>
    public static string Root { get; } = Find();

#if DEBUG
    /// <summary>The configuration of this build, and so of the output that is packed.</summary>
    public const string Configuration = "Debug";
#else
    /// <summary>The configuration of this build, and so of the output that is packed.</summary>
    public const string Configuration = "Release";
#endif

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
