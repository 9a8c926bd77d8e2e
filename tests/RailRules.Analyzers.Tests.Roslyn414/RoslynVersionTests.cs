using Microsoft.CodeAnalysis.CSharp;

namespace RailRules.Analyzers.Tests;

public class RoslynVersionTests
{
    [Fact]
    public void These_tests_run_on_the_oldest_roslyn() => Assert.Equal("4.14.0.0", typeof(CSharpCompilation).Assembly.GetName().Version!.ToString());
}
