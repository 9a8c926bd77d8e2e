using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers;
using RailRules.Review;
using RailRules.Rules;

namespace RailRules.Tool;

/// <summary>Evaluates a project's boards, with the evaluator that the compiler's analyzer uses.</summary>
internal sealed class BoardReader
{
    private readonly LoadedProject project;
    private readonly string root;
    private readonly Compilation compilation;
    private readonly CompilationBoards? boards;

    private readonly BoardSettings settings;

    /// <param name="project">The project.</param>
    /// <param name="root">The folder to which paths are relative; null: the project's.</param>
    /// <param name="today">The day on which waivers are judged; null: as the project's build says.</param>
    /// <param name="compilation">The project's compilation, where it shall be another.</param>
    public BoardReader(LoadedProject project, string? root, DateTime? today, Compilation? compilation = null)
    {
        this.project = project;
        this.root = root ?? project.Folder;
        settings = today is null ? project.Settings : project.Settings with { Today = today, UnreadToday = null };
        this.compilation = compilation ?? project.Compilation;
        boards = KnownTypes.TryCreate(this.compilation) is { } types ? new CompilationBoards(this.compilation, types, settings) : null;
    }

    /// <summary>The board classes; none also where the project does not refer to RailRules.</summary>
    public ImmutableArray<INamedTypeSymbol> Boards => boards?.Boards ?? [];

    /// <summary>Evaluates and checks one board.</summary>
    public BoardInput Read(INamedTypeSymbol board, ProjectFacts facts, CancellationToken cancellation)
    {
        var evaluation = boards!.Of(board, cancellation);
        var session = boards.Session;
        var read = new HashSet<ISymbol>(evaluation.Members.Select(member => member.Member.ContainingType), SymbolEqualityComparer.Default);
        return new BoardInput
        {
            Name = board.Name,
            FullName = board.ToDisplayString(),
            Project = project.Name,
            Today = settings.Today,
            At = PlaceOf(Places.Declaration(board, cancellation)),
            Rails = evaluation.Rails,
            Checks = evaluation.Checks,
            DesignRules = evaluation.Team.Rules,
            Findings = [.. FindingsOf(board, cancellation).Where(finding => !evaluation.Checks.Any(check => check.Rule == finding.Rule && check.Message == finding.Message)), .. facts.Outside.Where(one => read.Contains(one.Type)).Select(one => one.Finding)],
            OfProject = facts.OfNoBoard,
            CompilerErrors = facts.CompilerErrors,
            Written = place => session.OriginOf(place.Owner, place.Datum, place.Index) is { } origin ? PlaceOf(origin.Node.GetLocation()) : null,
            Belongs = check => PlaceOf(boards.LocationOf(check, evaluation, CancellationToken.None)),
            IsUnknown = session.IsUnknown,
            Fingerprint = facts.Fingerprint,
            FingerprintFiles = facts.Files,
        };
    }

    /// <summary>What holds for all boards of the project: its fingerprint, its compiler errors, what its types without boards say.</summary>
    public ProjectFacts Facts(CancellationToken cancellation)
    {
        var errors = compilation.GetDiagnostics(cancellation)
            .Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error)
            .Select(diagnostic => new BoardFinding(diagnostic.Id, RuleSeverity.Error, diagnostic.GetMessage(System.Globalization.CultureInfo.InvariantCulture), PlaceOf(diagnostic.Location)))
            .Distinct()
            .OrderBy(finding => finding.At?.File, StringComparer.Ordinal).ThenBy(finding => finding.At?.Line).ThenBy(finding => finding.At?.Column).ThenBy(finding => finding.Rule, StringComparer.Ordinal)
            .ToImmutableArray();
        var (hash, files) = project.Fingerprint(root);
        var outside = boards is null ? [] : Outside(cancellation).ToList();
        return new ProjectFacts(
            hash,
            files,
            errors,
            [.. outside.Where(one => one.Finding.Rule != FoundationRules.UnreachedRail.Id)],
            [.. outside.Where(one => one.Finding.Rule == FoundationRules.UnreachedRail.Id).Select(one => one.Finding).OrderBy(one => one.At?.File, StringComparer.Ordinal).ThenBy(one => one.At?.Line)]);
    }

    /// <summary>Findings in types that are no boards: values a board needs, rails that none reaches.</summary>
    private IEnumerable<(INamedTypeSymbol Type, BoardFinding Finding)> Outside(CancellationToken cancellation)
    {
        var ours = new HashSet<ISymbol>(Boards, SymbolEqualityComparer.Default);
        var pending = new Stack<INamespaceOrTypeSymbol>([compilation.Assembly.GlobalNamespace]);
        while (pending.TryPop(out var current))
        {
            foreach (var member in current.GetMembers().OfType<INamespaceOrTypeSymbol>())
            {
                pending.Push(member);
            }

            if (current is INamedTypeSymbol type && !ours.Contains(type))
            {
                foreach (var finding in FindingsOf(type, cancellation))
                {
                    yield return (type, finding);
                }
            }
        }
    }

    /// <summary>A type's findings that are no checks of rails: those the board's own checks tell.</summary>
    private IEnumerable<BoardFinding> FindingsOf(INamedTypeSymbol type, CancellationToken cancellation)
    {
        foreach (var finding in boards!.FindingsOf(type, cancellation))
        {
            if (finding.Id != FoundationRules.Waived.Id && FoundationRules.All.FirstOrDefault(rule => rule.Id == finding.Id) is { } rule)
            {
                yield return new BoardFinding(finding.Id, rule.Severity, finding.Message, PlaceOf(finding.Location));
            }
        }
    }

    private SourcePlace? PlaceOf(Location? location)
    {
        if (location is null || location.Kind is not (LocationKind.SourceFile or LocationKind.ExternalFile))
        {
            return null;
        }

        var span = location.GetLineSpan();
        var file = Path.IsPathRooted(span.Path) ? ProjectLoader.Relative(root, span.Path) : span.Path.Replace('\\', '/');
        return new SourcePlace(file, span.StartLinePosition.Line + 1, span.StartLinePosition.Character + 1);
    }
}

/// <summary>What all boards of a project share.</summary>
/// <param name="Fingerprint">SHA-256 of the inputs.</param>
/// <param name="Files">How many files it covers.</param>
/// <param name="CompilerErrors">The compiler's errors.</param>
/// <param name="Outside">Findings in types that are no boards, with the type: they concern the boards that read it.</param>
/// <param name="OfNoBoard">Rails that no board reaches.</param>
internal sealed record ProjectFacts(
    string Fingerprint, int Files, ImmutableArray<BoardFinding> CompilerErrors, ImmutableArray<(INamedTypeSymbol Type, BoardFinding Finding)> Outside, ImmutableArray<BoardFinding> OfNoBoard);
