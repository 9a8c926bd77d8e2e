using System.Text.RegularExpressions;

namespace RailRules.Package.Tests;

/// <summary>
/// Every sample builds as its name says: those called Unsafe fail with the findings that the comments at the end of their lines name, all others build without a word.
/// </summary>
[Collection(PackageCollection.Name)]
public sealed partial class SampleTests
{
    public static TheoryData<string> Samples =>
        [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples"), "*.csproj", SearchOption.AllDirectories).Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Sample_builds_as_its_name_says(string sample)
    {
        // Library and analyzer are built already, and are not built again under the running tests.
        var folder = Path.Combine(Repository.Root, "samples", sample);
        var build = BuildResult.Of(Repository.Root, folder, "-c", Repository.Configuration, "-p:BuildProjectReferences=false", "--no-incremental");
        if (!sample.EndsWith(".Unsafe", StringComparison.Ordinal))
        {
            build.SucceedsSilently();
            return;
        }

        var expected = Directory.EnumerateFiles(folder, "*.cs").SelectMany(file => File.ReadAllLines(file)
            .Select((line, index) => (Mark: Mark().Match(line), Line: index + 1))
            .Where(line => line.Mark.Success)
            .SelectMany(line => line.Mark.Groups["id"].Captures.Select(id => $"{Path.GetFileName(file)}({line.Line}): {id.Value}")));
        // The compiler may have a warning of its own on a mistaken line.
        var found = build.Fails().Findings.Where(finding => finding.Id.StartsWith("RAIL", StringComparison.Ordinal)).Select(finding => $"{finding.File}({finding.Line}): {finding.Id}");
        Assert.Equal(expected.Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex(@"// (?<id>RAIL\d{4})(, (?<id>RAIL\d{4}))*\s*$")]
    private static partial Regex Mark();
}
