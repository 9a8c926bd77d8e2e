using System.IO.Compression;
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
            "build/RailRules.targets",
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
    /// What stands beside the analyzer may ask for what the oldest compiler supplies (Roslyn 4.14 brings System.Collections.Immutable and
    /// System.Reflection.Metadata 9.0, System.Memory 4.0.1.2 on .NET Framework) and for its own neighbours, nothing else.
    /// </summary>
    [Theory]
    [InlineData("analyzers/dotnet/cs/RailRules.Analyzers.dll", "Microsoft.CodeAnalysis 4.14.0.0", "Microsoft.CodeAnalysis.CSharp 4.14.0.0", "RailRules", "System.Collections.Immutable 8.0.0.0", "UnitsNet 5.0.0.0", "netstandard 2.0.0.0")]
    [InlineData("analyzers/dotnet/cs/RailRules.dll", "System.Collections.Immutable 8.0.0.0", "UnitsNet 5.0.0.0", "netstandard 2.0.0.0")]
    [InlineData("analyzers/dotnet/cs/UnitsNet.dll", "netstandard 2.0.0.0")]
    [InlineData("lib/netstandard2.0/RailRules.dll", "System.Collections.Immutable 8.0.0.0", "UnitsNet 5.0.0.0", "netstandard 2.0.0.0")]
    public void Assemblies_refer_to_what_every_host_has(string entry, params string[] allowed)
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
        var references = metadata.AssemblyReferences.Select(metadata.GetAssemblyReference)
            .Select(reference => metadata.GetString(reference.Name) is "RailRules" ? "RailRules" : $"{metadata.GetString(reference.Name)} {reference.Version}")
            .Order(StringComparer.Ordinal);
        Assert.All(references, reference => Assert.Contains(reference, allowed));
    }
}
