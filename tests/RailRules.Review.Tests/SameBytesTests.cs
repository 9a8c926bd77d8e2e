using System.Globalization;
using Microsoft.CodeAnalysis;
using RailRules.Tool;

namespace RailRules.Review.Tests;

/// <summary>The same source gives the same bytes, whatever the culture of the machine and the order of the files.</summary>
public sealed class SameBytesTests
{
    /// <summary>Other decimal signs, digits, calendars, minus signs and letter cases.</summary>
    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("th-TH")]
    public async Task In_every_culture(string name)
    {
        var project = await LoadAsync(Repository.Sample("Lockhouse.Unsafe"));
        var expected = await WriteAsync(project, null);
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo(name);
            Assert.NotEqual(1.5.ToString(CultureInfo.InvariantCulture) + new DateTime(2027, 1, 31).ToString("d", CultureInfo.InvariantCulture), 1.5.ToString("G") + new DateTime(2027, 1, 31).ToString("d"));
            AssertSame(expected, await WriteAsync(project, null));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = before;
        }
    }

    /// <summary>The order in which the build lists the files, and in which the compilation has them.</summary>
    [Fact]
    public async Task In_every_order_of_the_files()
    {
        using var scratch = new ScratchProject(properties: "<EnableDefaultCompileItems>false</EnableDefaultCompileItems>");
        foreach (var file in Directory.EnumerateFiles(Path.GetDirectoryName(Repository.Sample("Lockhouse.Unsafe"))!, "*.cs"))
        {
            scratch.Write(Path.Combine("Shelf", Path.GetFileName(file)), File.ReadAllText(file));
        }

        string[] files = ["Parts.cs", "LockhouseShelf.cs", "CodeMistakes.cs"];
        var written = new List<IReadOnlyDictionary<string, string>>();
        foreach (var order in new[] { files, [.. files.Reverse()] })
        {
            scratch.Write(Path.Combine("Shelf", "Directory.Build.targets"), $"<Project><ItemGroup>{string.Concat(order.Select(file => $"<Compile Include=\"{file}\" />"))}</ItemGroup></Project>");
            var project = await LoadAsync(scratch.File);
            written.Add(await WriteAsync(project, null));

            // The compiler itself takes the files in any order.
            written.Add(await WriteAsync(project, project.Compilation.RemoveAllSyntaxTrees().AddSyntaxTrees(project.Compilation.SyntaxTrees.Reverse())));
        }

        Assert.All(written, one => AssertSame(written[0], one));
    }

    private static Task<LoadedProject> LoadAsync(string project) => new ProjectLoader(new BuildOptions(Repository.Configuration, null, Restore: true)).LoadAsync(project, CancellationToken.None);

    private static async Task<IReadOnlyDictionary<string, string>> WriteAsync(LoadedProject project, Compilation? compilation)
    {
        var reader = new BoardReader(project, null, new DateTime(2027, 1, 31), compilation);
        var facts = reader.Facts(CancellationToken.None);
        var written = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var board in reader.Boards)
        {
            var review = BoardReview.Of(reader.Read(board, facts, CancellationToken.None));
            foreach (var (extension, write) in Formats.All.Values)
            {
                written.Add(review.Input.FullName + extension, await write(review));
            }
        }

        return written;
    }

    private static void AssertSame(IReadOnlyDictionary<string, string> expected, IReadOnlyDictionary<string, string> actual)
    {
        Assert.NotEmpty(expected);
        Assert.Equal(expected.Keys.Order(StringComparer.Ordinal), actual.Keys.Order(StringComparer.Ordinal));
        Assert.All(expected, one => Assert.Equal(one.Value, actual[one.Key]));
    }
}
