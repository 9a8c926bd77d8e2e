using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;
using RailRules.Rules;
using RailRules.Tables;

namespace RailRules.Analyzers.Generation;

/// <summary>
/// Reports what is wrong in a parts table, at file, line and column: what cannot be read (RAIL0006) and what contradicts itself (RAIL0003).
/// <see cref="BoardAnalyzer"/> says it again where C# uses such a part.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class PartsTableAnalyzer : DiagnosticAnalyzer
{
    private const string Contradiction = "RAIL0003";

    private static readonly ConditionalWeakTable<SourceText, StrongBox<ImmutableArray<TableFinding>>> Findings = new();

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = [Descriptors.Of(FoundationRules.UnreadTable.Id), Descriptors.Of(Contradiction)];

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.EnableConcurrentExecution();
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.RegisterCompilationStartAction(start =>
        {
            if (KnownTypes.TryCreate(start.Compilation) is not null)
            {
                start.RegisterAdditionalFileAction(Analyze);
            }
        });
    }

    private static void Analyze(AdditionalFileAnalysisContext context)
    {
        if (!TableFiles.IsTable(context.AdditionalFile))
        {
            return;
        }

        var path = context.AdditionalFile.Path;
        var name = TableFiles.NameOf(path);
        if (context.AdditionalFile.GetText(context.CancellationToken) is not { } text)
        {
            Report(context, path, FoundationRules.UnreadTable.Id, default, $"'{name}' line 1: the file cannot be read", default);
            return;
        }

        var first = TableFiles.FirstOf(context.Options.AdditionalFiles.Where(TableFiles.IsTable).Select(file => file.Path), path);
        if (first != path)
        {
            var location = Location.Create(path, default, default);
            context.ReportDiagnostic(Diagnostic.Create(
                Descriptors.Of(FoundationRules.UnreadTable.Id), location, [Location.Create(first, default, default)],
                $"'{name}' line 1: two tables give the class '{TableIdentifiers.Class}.{TableIdentifiers.OfTable(path)}'; the other one is {first}, and this one is left out; rename one of them"));
            return;
        }

        var findings = Findings.GetValue(text, source => new StrongBox<ImmutableArray<TableFinding>>(Find(TableFiles.Read(source), name, TableIdentifiers.OfTable(path)))).Value;
        foreach (var finding in findings)
        {
            Report(context, path, finding.Id, finding.Cell, finding.Message, finding.Other);
        }
    }

    private static ImmutableArray<TableFinding> Find(PartsTableText table, string name, string tableClass)
    {
        var findings = new List<TableFinding>();
        foreach (var fault in table.Faults)
        {
            findings.Add(new TableFinding(FoundationRules.UnreadTable.Id, fault.Cell, TableFaultText.Of(fault, table, name), fault.Other));
        }

        AddClashes(table, name, tableClass, findings);
        foreach (var row in table.Rows)
        {
            AddContradictions(table, row, name, findings);
        }

        return [.. findings.OrderBy(finding => finding.Cell.Start)];
    }

    private static void AddClashes(PartsTableText table, string name, string tableClass, List<TableFinding> findings)
    {
        var names = TableIdentifiers.Assign(table, tableClass);
        Dictionary<string, TableRow>? owners = null;
        foreach (var row in table.Rows)
        {
            if (names[row.Index] is not null)
            {
                continue;
            }

            owners ??= table.Rows.Where(owner => names[owner.Index] is not null).ToDictionary(owner => names[owner.Index]!, StringComparer.Ordinal);
            var wanted = TableIdentifiers.OfPart(row.PartNumber, tableClass);
            findings.Add(new TableFinding(
                FoundationRules.UnreadTable.Id, row.Cells[0],
                TableFaultText.OneLine($"'{name}' line {row.Cells[0].Line + 1}: '{row.PartNumber}' and '{owners[wanted].PartNumber}' would both be the member '{wanted}'; this one is left out"), owners[wanted].Cells[0]));
        }
    }

    private static void AddContradictions(PartsTableText table, TableRow row, string name, List<TableFinding> findings)
    {
        var part = table.Make(row);
        foreach (var check in ContradictoryDatum.Validate(part))
        {
            var cells = check.Places.Where(place => ReferenceEquals(place.Owner, part) && place.Datum is not null).Select(place => CellOf(table, row, place.Datum!)).Where(cell => cell is not null).Distinct().ToList();

            // What an alternate says of itself is told in its own line.
            if (cells.Count > 0 && check.Verdict == Verdict.Fails)
            {
                findings.Add(new TableFinding(Contradiction, cells[0]!.Value, TableFaultText.OneLine($"'{name}' line {row.Cells[0].Line + 1}: {check.Message}"), cells.Count > 1 ? cells[1] : null));
            }
        }
    }

    private static CsvCell? CellOf(PartsTableText table, TableRow row, string datum)
    {
        for (var i = 1; i < table.Columns.Count; i++)
        {
            if (table.Columns[i]?.Column is { } column && column.Datum == datum && column.Shape is not TablePartNumbers && row.Text(i).Length > 0)
            {
                return row.Cells[i];
            }
        }

        return null;
    }

    private static void Report(AdditionalFileAnalysisContext context, string path, string id, CsvCell cell, string message, CsvCell? other) =>
        context.ReportDiagnostic(Diagnostic.Create(Descriptors.Of(id), Place(path, cell), other is { } second ? [Place(path, second)] : [], message));

    private static Location Place(string path, CsvCell cell) =>
        Location.Create(path, TextSpan.FromBounds(cell.Start, cell.End), new LinePositionSpan(new LinePosition(cell.Line, cell.Column), new LinePosition(cell.EndLine, cell.EndColumn)));

    private sealed record TableFinding(string Id, CsvCell Cell, string Message, CsvCell? Other);
}
