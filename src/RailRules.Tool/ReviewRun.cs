using RailRules.Review;
using Spectre.Console;

namespace RailRules.Tool;

/// <summary>What the command was asked for.</summary>
internal sealed record ReviewOptions(string Path, string Output, IReadOnlyList<string> Formats, BuildOptions Build, string? Root, bool Strict, bool Quiet, string? Baseline, double? MaxLoss, DateTime? Today = null, bool AllowNoBoard = false);

/// <summary>One run of the command: load, evaluate, write, sum up.</summary>
internal sealed class ReviewRun(ReviewOptions options, TextWriter output, TextWriter error)
{
    public async Task<int> RunAsync(CancellationToken cancellation)
    {
        try
        {
            var baseline = options.Baseline is { } file ? Baseline.Read(file) : null;
            Output.Prepare(options.Output);
            var reviews = await ProgressAsync((report, token) => ReviewAsync(report, token), cancellation);
            var changes = await WriteAsync(reviews, baseline, cancellation);
            Terminal.Sum(output, reviews, changes, options);
            return Code(reviews, changes);
        }
        catch (CannotRunException exception)
        {
            error.WriteLine($"{Shown.Text(exception.Message)}: {Shown.Text(exception.Why)}.");
            error.WriteLine($"What to do: {Shown.Text(exception.Remedy)}.");
            return ExitCode.CannotRun;
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("Interrupted; files already written are whole.");
            return ExitCode.Interrupted;
        }
    }

    private int Code(IReadOnlyList<NamedReview> reviews, IReadOnlyList<BoardChanges> changes) =>
        reviews.Any(one => one.Review.Verdict == Outcome.Fails) ? ExitCode.Fails
        : options.MaxLoss is { } most && changes.Any(board => board.Lost(most).Any()) ? ExitCode.MarginLost
        : options.Strict && reviews.Any(one => one.Review.Verdict == Outcome.Undecided) ? ExitCode.Undecided
        : ExitCode.Holds;

    internal async Task<IReadOnlyList<NamedReview>> ReviewAsync(Action<string, int, int> report, CancellationToken cancellation)
    {
        var root = options.Root is { } given ? System.IO.Path.GetFullPath(given) : null;
        if (root is not null && !Directory.Exists(root))
        {
            throw new CannotRunException($"There is no folder '{options.Root}'", "--root names it", "name the folder to which paths shall be relative");
        }

        var targets = await Targets.OfAsync(options.Path, cancellation);
        var loader = new ProjectLoader(options.Build);
        var read = new List<(BoardReader Reader, ProjectFacts Facts)>();
        for (var i = 0; i < targets.Count; i++)
        {
            report("reading projects", i, targets.Count);
            var reader = new BoardReader(await loader.LoadAsync(targets[i], cancellation), root, options.Today);
            if (!reader.Boards.IsEmpty)
            {
                read.Add((reader, reader.Facts(cancellation)));
            }
        }

        var boards = read.SelectMany(one => one.Reader.Boards.Select(board => (one.Reader, one.Facts, Board: board))).ToList();
        if (boards.Count == 0)
        {
            if (options.AllowNoBoard)
            {
                return [];
            }

            throw new CannotRunException($"'{options.Path}' has no board", "no class is marked [Board]", "mark the class whose static members are your rails with [Board], and reference the package RailRules");
        }

        var inputs = new BoardInput[boards.Count];
        var reviews = new BoardReview[boards.Count];
        var done = 0;
        report("evaluating boards", 0, boards.Count);
        await Parallel.ForAsync(0, boards.Count, cancellation, (i, token) =>
        {
            inputs[i] = boards[i].Reader.Read(boards[i].Board, boards[i].Facts, token);
            reviews[i] = BoardReview.Of(inputs[i]);
            report("evaluating boards", Interlocked.Increment(ref done), boards.Count);
            return ValueTask.CompletedTask;
        });
        return [.. Output.Names(inputs).Zip(reviews, (name, review) => new NamedReview(name, review))];
    }

    private async Task<IReadOnlyList<BoardChanges>> WriteAsync(IReadOnlyList<NamedReview> reviews, Baseline? baseline, CancellationToken cancellation)
    {
        var changes = new List<BoardChanges>();
        foreach (var (name, review) in reviews)
        {
            var file = System.IO.Path.Combine(options.Output, name);
            foreach (var format in options.Formats)
            {
                var (extension, write) = Formats.All[format];
                await Output.WriteAsync(file + extension, await write(review), cancellation);
            }

            if (baseline is not null)
            {
                var change = baseline.Compare(review);
                changes.Add(change);
                await Output.WriteAsync(file + ".changes.md", change.ToMarkdown(options.MaxLoss), cancellation);
            }
        }

        return changes;
    }

    private async Task<T> ProgressAsync<T>(Func<Action<string, int, int>, CancellationToken, Task<T>> work, CancellationToken cancellation)
    {
        if (options.Quiet || Console.IsErrorRedirected || !ReferenceEquals(error, Console.Error))
        {
            return await work((_, _, _) => { }, cancellation);
        }

        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) });
        return await console.Progress().AutoClear(true).Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new SpinnerColumn()).StartAsync(async progress =>
        {
            var task = progress.AddTask("starting", maxValue: 1);
            return await work((what, done, all) =>
            {
                task.Description = what;
                task.MaxValue = all;
                task.Value = done;
            }, cancellation);
        });
    }
}

/// <summary>A review and the name of its files.</summary>
internal sealed record NamedReview(string Name, BoardReview Review);
