namespace RailRules.Package.Tests;

/// <summary>Every sample builds as its name says: those called Unsafe fail with the findings stated here, the others build without a word.</summary>
[Collection(PackageCollection.Name)]
public sealed class SampleTests
{
    private static readonly Dictionary<string, Finding[]> Mistakes = new(StringComparer.Ordinal);

    public static TheoryData<string> Samples =>
        [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples"), "*.csproj", SearchOption.AllDirectories).Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Sample_builds_as_its_name_says(string sample)
    {
        // Library and analyzer are built already, and are not built again under the running tests.
        var build = BuildResult.Of(Repository.Root, Path.Combine("samples", sample), "-c", Repository.Configuration, "-p:BuildProjectReferences=false", "--no-incremental");
        if (sample.EndsWith(".Unsafe", StringComparison.Ordinal))
        {
            Assert.Equal(Mistakes[sample], build.Fails().Findings);
        }
        else
        {
            build.SucceedsSilently();
        }
    }
}
