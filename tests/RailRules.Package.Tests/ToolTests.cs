using System.Text.Json;

namespace RailRules.Package.Tests;

/// <summary>The command as a .NET tool from a feed, in a new user's folder, by hand and from the build.</summary>
[Collection(PackageCollection.Name)]
public sealed class ToolTests(PackageFeed feed)
{
    /// <summary>One folder from nothing to the review that the build writes.</summary>
    [Fact]
    public void A_new_user_installs_the_tool_reviews_a_board_and_lets_the_build_do_it()
    {
        var (packed, text) = Dotnet.Run(Repository.Root, "pack", "src/RailRules.Tool", "--no-build", "-c", Repository.Configuration, $"-p:PackageVersion={feed.Version}", "-o", Path.Combine(feed.Folder, "feed"));
        Assert.True(packed == 0, text);
        var consumer = new Consumer(feed, "New user", "<TargetFramework>net10.0</TargetFramework>");
        consumer.Write("BladeShelf.cs", Sources.Sound);

        // The property alone, without the tool: the build stops and says what to do.
        var without = consumer.Build("-p:RailRulesReview=true").Fails();
        Assert.Contains("dotnet tool install RailRules.Tool --create-manifest-if-needed", without.Output, StringComparison.Ordinal);

        var (installed, said) = Dotnet.Run(consumer.Folder, "tool", "install", "RailRules.Tool", "--version", feed.Version, "--create-manifest-if-needed");
        Assert.True(installed == 0, said);
        var (reviewed, summary) = Dotnet.Run(consumer.Folder, "tool", "run", "railrules", "--", "review", "--format", "html,json");
        Assert.True(reviewed == 0, summary);
        Assert.Contains("Consumer.BladeShelf: ", summary, StringComparison.Ordinal);
        var byHand = File.ReadAllText(Path.Combine(consumer.Folder, "review", "BladeShelf.json"));

        // From the build: the same bytes as by hand.
        var folder = Path.Combine(consumer.Folder, "bin", "Debug", "net10.0", "review");
        string[] property = ["--no-restore", "-p:RailRulesReview=true", "-p:RailRulesReviewFormat=html%3Bjson"];
        consumer.Build(property).SucceedsSilently();
        Assert.Equal(["BladeShelf.html", "BladeShelf.json"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(byHand, File.ReadAllText(Path.Combine(folder, "BladeShelf.json")));

        // Nothing changed: nothing is written. A board whose finding stops the build has its review all the same.
        var written = File.GetLastWriteTimeUtc(Path.Combine(folder, "BladeShelf.json"));
        consumer.Build(property).SucceedsSilently();
        Assert.Equal(written, File.GetLastWriteTimeUtc(Path.Combine(folder, "BladeShelf.json")));
        consumer.Write("BladeShelf.cs", Sources.Unsound);
        Assert.Equal("RAIL0101", Assert.Single(consumer.Build(property).Fails().Findings).Id);
        using var review = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "BladeShelf.json")));
        var failing = Assert.Single(review.RootElement.GetProperty("checks").EnumerateArray(), check => check.GetProperty("verdict").GetString() == "fails");
        Assert.Equal(("RAIL0101", Sources.UnsoundLine), (failing.GetProperty("rule").GetString(), failing.GetProperty("at").GetProperty("line").GetInt32()));

        // What the command cannot do, the build says; a project without boards needs no review.
        var wrong = consumer.Build("--no-restore", "-p:RailRulesReview=true", "-p:RailRulesReviewFormat=pdf").Fails();
        Assert.Contains("'pdf' is no format", wrong.Output, StringComparison.Ordinal);
        consumer.Write("BladeShelf.cs", "namespace Consumer; public static class Nothing;");
        consumer.Build(property).SucceedsSilently();
    }
}
