using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers;
using RailRules.Analyzers.Choosing;
using RailRules.Choosing;
using RailRules.Review;

namespace RailRules.Tool;

/// <summary>What 'railrules choose' was asked for.</summary>
internal sealed record ChooseOptions(string Path, BuildOptions Build, string? At, string? SecondSource, string? Part, bool Apply, string Format, int Most);

/// <summary>One run of 'railrules choose': load, evaluate, search, print, and put the part into the source where that is asked for.</summary>
internal sealed class ChooseRun(ChooseOptions options, TextWriter output, TextWriter error)
{
    /// <summary>Called before a file is written, so that tests can change it in between.</summary>
    internal Action<string>? BeforeWrite { get; set; }

    public async Task<int> RunAsync(CancellationToken cancellation)
    {
        try
        {
            var projects = await LoadAsync(cancellation);
            return options.SecondSource is { } part ? SecondSource(projects, part) : await ChooseAsync(projects, options.At!, cancellation);
        }
        catch (CannotRunException exception)
        {
            error.WriteLine($"{Shown.Text(exception.Message)}: {Shown.Text(exception.Why)}.");
            error.WriteLine($"What to do: {Shown.Text(exception.Remedy)}.");
            return ExitCode.CannotRun;
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("Interrupted; nothing was changed.");
            return ExitCode.Interrupted;
        }
    }

    private async Task<ImmutableArray<ProjectChoices>> LoadAsync(CancellationToken cancellation)
    {
        var loader = new ProjectLoader(options.Build);
        var found = ImmutableArray.CreateBuilder<ProjectChoices>();
        foreach (var target in await Targets.OfAsync(options.Path, cancellation))
        {
            var project = await loader.LoadAsync(target, cancellation);
            if (BoardChoices.Of(project.Compilation) is { Boards.Boards.IsEmpty: false } choices)
            {
                found.Add(new ProjectChoices(project, choices));
            }
        }

        return found.Count > 0
            ? found.ToImmutable()
            : throw new CannotRunException($"'{options.Path}' has no board", "no class is marked [Board]", "mark the class whose static members are your rails with [Board], and reference the package RailRules");
    }

    private async Task<int> ChooseAsync(ImmutableArray<ProjectChoices> projects, string at, CancellationToken cancellation)
    {
        var (project, place) = PlaceNames.Find(projects, at);
        var choices = project.Choices;
        var kind = ChoiceText.Kind(place.Part);
        RequireTables(projects);
        if (!choices.Tables.LikeIt(place.Part).Any())
        {
            throw new CannotRunException(
                $"No {kind} can be chosen for {place.Name}", $"the parts tables ({string.Join(", ", choices.Tables.Files)}) have none", $"add a table of {kind}s, for example {char.ToUpperInvariant(kind[0])}{kind[1..].Replace(" ", "", StringComparison.Ordinal)}s.parts.csv, to the project");
        }

        var choice = choices.Choose(place);
        var chosen = new Chosen(project, place, choices.Together(place), choice);
        var applied = options.Apply ? await ApplyAsync(chosen, cancellation) : null;
        output.Write(options.Format == "json" ? ChoiceJson.Write(chosen, applied) : "");
        if (options.Format != "json")
        {
            ChoiceText.Write(output, chosen, options.Most);
            if (applied is not null)
            {
                output.WriteLine($"Written: {Shown.Text(applied.File)}, line {applied.Line}: {Shown.Short(applied.Before, 100)} is now {Shown.Short(applied.After, 100)}. Build the project and look at the change.");
            }
        }

        return choice.Passing.IsEmpty ? ExitCode.Fails : ExitCode.Holds;
    }

    private static void RequireTables(ImmutableArray<ProjectChoices> projects)
    {
        if (projects.All(project => project.Choices.Tables.Files.IsEmpty))
        {
            throw new CannotRunException("There is nothing to choose from", "the project has no parts table", "add a table, for example Fuses.parts.csv; docs/parts-tables.md describes it");
        }
    }

    /// <summary>Puts the first part that passes, or the one asked for, into the source, if the file is what was read and the edited board gives what was meant.</summary>
    private async Task<Applied?> ApplyAsync(Chosen chosen, CancellationToken cancellation)
    {
        var (choices, place) = (chosen.Project.Choices, chosen.Place);
        if (chosen.Choice.Passing.IsEmpty)
        {
            return null;
        }

        var wanted = chosen.Choice.Passing[0];
        if (options.Part is { } asked)
        {
            wanted = chosen.Choice.Passing.FirstOrDefault(candidate => candidate.Label == asked || choices.TablePartOf(candidate.Part).PartNumber == asked)
                ?? throw new CannotRunException($"'{asked}' is not put in {place.Name}", "it is not among the parts that pass there", "name one that passes, or leave --part out for the first");
        }

        if (choices.NoEdit(place) is { } reason)
        {
            throw new CannotRunException($"The source of {place.Name} is not changed", reason, $"change it by hand to {choices.TablePartOf(wanted.Part).PartNumber}");
        }

        var edit = choices.Edit(place, choices.TablePartOf(wanted.Part))!;
        if (!File.Exists(edit.Tree.FilePath))
        {
            throw new CannotRunException($"The source of {place.Name} is not changed", $"'{edit.Tree.FilePath}' is generated or has gone", "change by hand what generates it");
        }

        Verify(chosen, wanted, edit, cancellation);
        var text = edit.Tree.GetText(cancellation);
        await SourceFile.ReplaceAsync(edit.Tree.FilePath, text, text.WithChanges(edit.Change), BeforeWrite, cancellation);
        return new Applied(
            ProjectLoader.Relative(chosen.Project.Project.Folder, edit.Tree.FilePath), text.Lines.GetLinePosition(edit.Change.Span.Start).Line + 1, text.ToString(edit.Change.Span), edit.Change.NewText!, wanted.Label);
    }

    /// <summary>Evaluates the edited source: the place has the part, the compiler says nothing new, and no check of the part fails.</summary>
    private static void Verify(Chosen chosen, Candidate wanted, PartEdit edit, CancellationToken cancellation)
    {
        var before = chosen.Project.Project.Compilation;
        var after = before.ReplaceSyntaxTree(edit.Tree, CSharpSyntaxTree.ParseText(edit.Tree.GetText(cancellation).WithChanges(edit.Change), (CSharpParseOptions)edit.Tree.Options, edit.Tree.FilePath, cancellation));
        var errors = Errors(before);
        var added = Errors(after).FirstOrDefault(one => !errors.Contains(one));
        var choices = BoardChoices.Of(after)!;
        var number = (wanted.Part as Element)?.PartNumber ?? (wanted.Part as TransientSuppressor)?.PartNumber;
        var why = added is not null ? $"the edited source does not compile: {added}" : null;
        foreach (var place in chosen.Together)
        {
            var now = choices.Places.FirstOrDefault(one => one.Name == place.Name);
            why ??= ((now?.Part as Element)?.PartNumber ?? (now?.Part as TransientSuppressor)?.PartNumber) != number ? $"{place.Name} would not get that part" : null;
            why ??= now!.Board.Checks.FirstOrDefault(check => check.Verdict == Verdict.Fails && ReferenceEquals(check.Part, now.Part) && ReferenceEquals(check.Rail, now.Place.Rail))?.Message;
        }

        if (why is not null)
        {
            throw new CannotRunException($"The source of {chosen.Place.Name} is not changed", why, "change it by hand");
        }

        HashSet<string> Errors(Compilation one) => [.. one.GetDiagnostics(cancellation).Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error).Select(diagnostic => diagnostic.Id + " " + diagnostic.GetMessage(System.Globalization.CultureInfo.InvariantCulture))];
    }

    private int SecondSource(ImmutableArray<ProjectChoices> projects, string part)
    {
        RequireTables(projects);
        var found = RailRules.Tool.SecondSource.Of(projects, part);
        if (options.Format == "json")
        {
            output.Write(ChoiceJson.Write(found));
        }
        else
        {
            ChoiceText.Write(output, found);
        }

        return found.Alternates.Any(alternate => alternate.Fails.IsEmpty) ? ExitCode.Holds : ExitCode.Fails;
    }
}

/// <summary>A project with what can be chosen in it.</summary>
internal sealed record ProjectChoices(LoadedProject Project, BoardChoices Choices);

/// <summary>What a search found for a place.</summary>
internal sealed record Chosen(ProjectChoices Project, PlacedPart Place, ImmutableArray<PlacedPart> Together, PartChoice Choice);

/// <summary>What was written.</summary>
internal sealed record Applied(string File, int Line, string Before, string After, string Part);
