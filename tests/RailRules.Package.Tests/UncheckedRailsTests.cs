namespace RailRules.Package.Tests;

/// <summary>RAIL0014: a build that leaves rails unchecked says so.</summary>
[Collection(PackageCollection.Name)]
public sealed class UncheckedRailsTests(UncheckedRailsTests.Projects projects) : IClassFixture<UncheckedRailsTests.Projects>
{
    [Fact]
    public void A_compiler_older_than_the_analyzer_is_an_error()
    {
        var finding = Assert.Single(projects.WithBoard.Build("--no-restore", "-p:CompilerApiVersion=roslyn4.11").Fails().Findings);
        Assert.Equal(("RAIL0014", "WithBoard.csproj", "error"), (finding.Id, finding.File, finding.Severity));
        Assert.Equal(
            "The C# compiler of this build (API version 4.11) cannot check rails, which takes Roslyn 4.14 or newer: "
            + "build with .NET SDK 9.0.300 or newer, or with Visual Studio 2022 17.14 or newer.",
            finding.Message);
    }

    [Theory]
    [InlineData("RunAnalyzers")]
    [InlineData("RunAnalyzersDuringBuild")]
    public void Analysis_switched_off_is_a_warning(string property)
    {
        var finding = Assert.Single(projects.WithBoard.Build("--no-restore", "--no-incremental", $"-p:{property}=false").Succeeds().Findings);
        Assert.Equal(("RAIL0014", "WithBoard.csproj", "warning"), (finding.Id, finding.File, finding.Severity));
        Assert.Equal($"The boards in Board.cs are not checked by this build, because {property} is false: remove that setting.", finding.Message);
    }

    [Fact]
    public void Analysis_switched_off_fails_where_warnings_are_errors()
    {
        var finding = Assert.Single(projects.WithBoard.Build("--no-restore", "-p:RunAnalyzers=false", "-warnaserror").Fails().Findings);
        Assert.Equal(("RAIL0014", "error"), (finding.Id, finding.Severity));
    }

    [Theory]
    [InlineData("CS1591%3BRAIL0101%3Bad0001", "RAIL0101, ad0001")]
    [InlineData("RAIL0301%2C9057", "RAIL0301, 9057")]
    public void Ids_in_NoWarn_are_a_warning(string noWarn, string named)
    {
        var finding = Assert.Single(projects.WithBoard.Build("--no-restore", "-p:NoWarn=" + noWarn).Succeeds().Findings);
        Assert.Equal(("RAIL0014", "WithBoard.csproj", "warning"), (finding.Id, finding.File, finding.Severity));
        Assert.Equal(
            $"Findings on the boards in Board.cs are silenced for the whole build, because NoWarn names {named}: remove them there, and set a rule's severity in .editorconfig where it does not apply.",
            finding.Message);
    }

    [Fact]
    public void A_project_that_removes_the_analyzer_is_a_warning()
    {
        var finding = Assert.Single(projects.WithoutAnalyzer.Build("--no-restore").Succeeds().Findings);
        Assert.Equal(("RAIL0014", "WithoutAnalyzer.csproj", "warning"), (finding.Id, finding.File, finding.Severity));
        Assert.Equal(
            "The boards in Board.cs are not checked by this build, because the analyzer of the RailRules package does not reach this project: "
            + "reference the package RailRules in the project itself, without excluding its analyzers.",
            finding.Message);
    }

    [Theory]
    [InlineData("-p:RunAnalyzers=false")]
    [InlineData("-p:NoWarn=RAIL0101")]
    [InlineData("-p:Nothing=special")]
    public void A_project_without_boards_says_nothing(string property) =>
        projects.WithoutBoard.Build("--no-restore", "--no-incremental", property).SucceedsSilently();

    /// <summary>Three projects, restored once.</summary>
    public sealed class Projects
    {
        private const string Properties = "<TargetFramework>net10.0</TargetFramework>";

        public Projects(PackageFeed feed)
        {
            WithBoard = new Consumer(feed, "WithBoard", Properties);
            WithBoard.Write("Board.cs", Sources.Sound);
            WithoutBoard = new Consumer(feed, "WithoutBoard", Properties);
            WithoutBoard.Write("Class.cs", """
                // A comment may say [Board] without being one.
                public static class Class
                {
                    public static int Board(int[] Board) => Board[0];
                }
                """);
            WithoutAnalyzer = new Consumer(feed, "WithoutAnalyzer", Properties, targets: """
                <Target Name="RemoveAnalyzers" BeforeTargets="CoreCompile"><ItemGroup><Analyzer Remove="@(Analyzer)" /></ItemGroup></Target>
                """);
            WithoutAnalyzer.Write("Board.cs", Sources.Sound);
            WithBoard.Restore().Succeeds();
            WithoutBoard.Restore().Succeeds();
            WithoutAnalyzer.Restore().Succeeds();
        }

        internal Consumer WithBoard { get; }

        internal Consumer WithoutBoard { get; }

        internal Consumer WithoutAnalyzer { get; }
    }
}
