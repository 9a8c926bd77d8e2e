using System.IO.Compression;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;

namespace RailRules.Package.Tests;

[Collection(PackageCollection.Name)]
public sealed class PackageContentTests(PackageFeed feed)
{
    [Fact]
    public void Entries_are_these_and_no_others()
    {
        using var package = ZipFile.OpenRead(feed.PackageFile);
        string[] expected =
        [
            "README.md",
            "RailRules.nuspec",
            "analyzers/dotnet/cs/RailRules.Analyzers.dll",
            "analyzers/dotnet/cs/RailRules.dll",
            "analyzers/dotnet/cs/UnitsNet.dll",
            "build/RailRules.props",
            "build/RailRules.targets",
            "buildTransitive/RailRules.props",
            "buildTransitive/RailRules.targets",
            "lib/netstandard2.0/RailRules.dll",
            "lib/netstandard2.0/RailRules.xml",
        ];
        string[] envelope = ["[Content_Types].xml", "_rels/.rels"];
        var entries = package.Entries.Select(entry => entry.FullName)
            .Where(name => !envelope.Contains(name) && !name.EndsWith(".psmdcp", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);
        Assert.Equal(expected, entries);
    }

    [Fact]
    public void The_same_build_packs_to_the_same_bytes()
    {
        var again = Path.Combine(feed.Folder, "again");
        feed.Pack(again);
        Assert.Equal(File.ReadAllBytes(feed.PackageFile), File.ReadAllBytes(Path.Combine(again, Path.GetFileName(feed.PackageFile))));
    }

    [Fact]
    public void A_consumer_gets_the_units_and_the_immutable_collections_to_compile_against()
    {
        using var package = ZipFile.OpenRead(feed.PackageFile);
        using var stream = package.GetEntry("RailRules.nuspec")!.Open();
        var dependencies = XDocument.Load(stream).Descendants().Where(element => element.Name.LocalName == "dependency")
            .Select(element => $"{(string?)element.Attribute("id")} {(string?)element.Attribute("version")} without {(string?)element.Attribute("exclude")}");
        Assert.Equal(["System.Collections.Immutable 8.0.0 without Build,Analyzers", "UnitsNet 5.75.1 without Build,Analyzers"], dependencies);
    }

    /// <summary>
    /// What stands beside the analyzer may ask for its neighbours and for what the oldest compiler supplies, which the compiler's own package shows:
    /// its .NET Framework folder holds every assembly that it brings; on .NET the runtime has newer ones.
    /// </summary>
    [Theory]
    [InlineData("analyzers/dotnet/cs/RailRules.Analyzers.dll", "RailRules", "UnitsNet")]
    [InlineData("analyzers/dotnet/cs/RailRules.dll", "UnitsNet")]
    [InlineData("analyzers/dotnet/cs/UnitsNet.dll")]
    public void Assemblies_beside_the_analyzer_refer_to_what_the_oldest_compiler_supplies(string entry, params string[] neighbours)
    {
        var compiler = Path.Combine(PackageFeed.MachinePackages, "microsoft.net.compilers.toolset", "4.14.0", "tasks", "net472");
        foreach (var (name, version) in References(entry).Where(reference => reference.Name != "netstandard" && !neighbours.Contains(reference.Name)))
        {
            var supplied = AssemblyName.GetAssemblyName(Path.Combine(compiler, name + ".dll")).Version;
            Assert.True(version <= supplied, $"{entry} asks for {name} {version}; Roslyn 4.14 brings {supplied}.");
        }
    }

    [Fact]
    public void The_library_refers_to_what_the_package_s_dependencies_bring()
    {
        // System.Collections.Immutable brings System.Memory where the framework lacks it.
        string[] brought = ["System.Collections.Immutable", "System.Memory", "UnitsNet", "netstandard"];
        Assert.All(References("lib/netstandard2.0/RailRules.dll"), reference => Assert.Contains(reference.Name, brought));
    }

    private (string Name, Version Version)[] References(string entry)
    {
        using var package = ZipFile.OpenRead(feed.PackageFile);
        using var content = new MemoryStream();
        using (var stream = package.GetEntry(entry)!.Open())
        {
            stream.CopyTo(content);
        }

        content.Position = 0;
        using var file = new PEReader(content);
        var metadata = file.GetMetadataReader();
        return [.. metadata.AssemblyReferences.Select(metadata.GetAssemblyReference).Select(reference => (metadata.GetString(reference.Name), reference.Version))];
    }
}
