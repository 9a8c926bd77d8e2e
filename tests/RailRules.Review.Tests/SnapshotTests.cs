namespace RailRules.Review.Tests;

/// <summary>What the reviews of the samples say, so that a change of a rule, a text or a writer is seen before it is committed.</summary>
[Collection(SampleCollection.Name)]
public sealed class SnapshotTests(SampleReviews samples)
{
    /// <summary>Every board's Markdown: verdicts, open findings, thin margins, missing data.</summary>
    [Fact]
    public void Markdown_of_every_board()
    {
        Assert.NotEmpty(samples.All);
        Assert.All(samples.All, one => Snapshots.Match(ReviewMarkdown.Write(one.Review), one.Review.Input.FullName + ".md"));
    }

    /// <summary>Every form of one board in full.</summary>
    [Theory]
    [InlineData("html")]
    [InlineData("markdown")]
    [InlineData("json")]
    [InlineData("sarif")]
    [InlineData("csv")]
    public async Task Every_form_of_a_board(string format)
    {
        Assert.Contains(format, Tool.Formats.All.Keys);
        var (extension, write) = Tool.Formats.All[format];
        var review = samples.Of("Lockhouse.Unsafe.Unevaluated").Review;
        Snapshots.Match(await write(review), review.Input.FullName + extension);
    }
}
