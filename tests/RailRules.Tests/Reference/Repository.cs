namespace RailRules.Tests.Reference;

/// <summary>Files of the repository that are no test data: pages that tests hold to the truth.</summary>
internal static class Repository
{
    /// <summary>The folder of the solution, above the test's own output.</summary>
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "RailRules.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("the tests run outside the repository");
    }
}
