using System.Security;

namespace RailRules.Package.Tests;

/// <summary>
/// The package, packed once a run from what was built, in a feed of its own; consumers stand in the same temporary folder, whose path has spaces.
/// The machine's packages folder is only read: RailRules and what it lacks go to a packages folder here.
/// </summary>
public sealed class PackageFeed : IDisposable
{
    public PackageFeed()
    {
        Folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), $"rail rules {Guid.NewGuid():N}"[..19])).FullName;
        Pack(Path.Combine(Folder, "feed"));
        PackageFile = Path.Combine(Folder, "feed", $"RailRules.{Version}.nupkg");

        var fallback = Directory.Exists(MachinePackages) ? $"""<add key="machine" value="{SecurityElement.Escape(MachinePackages)}" />""" : "";
        File.WriteAllText(Path.Combine(Folder, "NuGet.config"), $"""
            <configuration>
              <packageSources><add key="railrules-test" value="feed" /></packageSources>
              <config><add key="globalPackagesFolder" value="packages" /></config>
              <fallbackPackageFolders>{fallback}</fallbackPackageFolders>
            </configuration>
            """);
        // Nothing from folders above reaches the consumers.
        foreach (var name in (string[])["Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props"])
        {
            File.WriteAllText(Path.Combine(Folder, name), "<Project />");
        }

        File.WriteAllText(Path.Combine(Folder, ".editorconfig"), "root = true");
    }

    /// <summary>The machine's packages folder.</summary>
    public static string MachinePackages { get; } = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } named
        ? named
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    public string Folder { get; }

    public string PackageFile { get; }

    /// <summary>A version that no cache has.</summary>
    public string Version { get; } = $"0.1.0-test.r{Guid.NewGuid():N}";

    /// <summary>Packs what was built, without building.</summary>
    public void Pack(string output)
    {
        var (exitCode, text) = Dotnet.Run(Repository.Root, "pack", "src/RailRules.Package", "--no-build", "-c", Repository.Configuration, $"-p:PackageVersion={Version}", "-o", output);
        Assert.True(exitCode == 0, text);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

/// <summary>All tests share one package and run one after another: each is a build of its own.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class PackageCollection : ICollectionFixture<PackageFeed>
{
    public const string Name = "package";
}
