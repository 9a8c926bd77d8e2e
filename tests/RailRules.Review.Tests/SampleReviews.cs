using System.Collections.Immutable;
using RailRules.Tool;

namespace RailRules.Review.Tests;

/// <summary>The reviews of all samples, made once: from their projects, as the command makes them.</summary>
public sealed class SampleReviews : IAsyncLifetime
{
    internal ImmutableArray<NamedReview> All { get; private set; } = [];

    internal NamedReview Of(string fullName) => All.Single(one => one.Review.Input.FullName == fullName);

    public async Task InitializeAsync()
    {
        var all = ImmutableArray.CreateBuilder<NamedReview>();
        foreach (var sample in Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples"), "*.csproj", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            all.AddRange(await RunOf(sample).ReviewAsync((_, _, _) => { }, CancellationToken.None));
        }

        All = all.ToImmutable();
    }

    public Task DisposeAsync() => Task.CompletedTask;

    internal static ReviewRun RunOf(string project) =>
        new(new ReviewOptions(project, "", [], new BuildOptions(Repository.Configuration, null, Restore: true), null, false, true, null, null), TextWriter.Null, TextWriter.Null);
}

[CollectionDefinition(Name)]
public sealed class SampleCollection : ICollectionFixture<SampleReviews>
{
    public const string Name = "Reviews of the samples";
}
