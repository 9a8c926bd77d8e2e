using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Generation;

namespace RailRules.Analyzers.Evaluation;

/// <content>Parts of generated classes: made from their row, with the expression that uses them as their origin.</content>
internal sealed partial class Interpreter
{
    private readonly GeneratedTables tables = new();

    /// <summary>The part behind <c>Parts.Fuses.Reed20</c>; null where the property is none of a table.</summary>
    private object? TablePart(IPropertySymbol property, IOperation at, Frame frame)
    {
        if (tables.Find(property.ContainingType) is not { } table)
        {
            return null;
        }

        if (table.OfMember(property.Name) is { } row)
        {
            return TablePart(table, row, at, frame);
        }

        return property.Name == TableIdentifiers.All ? AllParts(table, property, at, frame) : null;
    }

    /// <summary>The part behind <c>Parts.Fuses.Find("Reed20")</c>; null where the method is none of a table.</summary>
    private object? TablePart(IMethodSymbol method, object?[] arguments, IOperation at, Frame frame)
    {
        if (method.Name != TableIdentifiers.Find || arguments.Length != 1 || tables.Find(method.ContainingType) is not { } table)
        {
            return null;
        }

        return arguments[0] switch
        {
            Unknown => Unknown.Value,
            string number when table.OfPartNumber(number) is { } row => TablePart(table, row, at, frame),
            string number => throw Raise(new KeyNotFoundException($"The table has no part '{number}'."), at, frame),
            _ => throw Raise(new ArgumentNullException("key"), at, frame),
        };
    }

    private object TablePart(GeneratedTable table, Tables.TableRow row, IOperation at, Frame frame)
    {
        Step(at, frame);
        var part = table.Make(row);
        Enter(table, row, part, at, frame);
        return part;
    }

    private object AllParts(GeneratedTable table, IPropertySymbol property, IOperation at, Frame frame)
    {
        Charge(table.Rows.Count, at, frame);
        var parts = (Array)table.MakeAll();
        foreach (var row in table.Rows)
        {
            Enter(table, row, parts.GetValue(row.Index)!, at, frame);
        }

        return Sequences.Of(parts.GetType().GetElementType()!).ImmutableArray(parts);
    }

    private void Enter(GeneratedTable table, Tables.TableRow row, object part, IOperation at, Frame frame)
    {
        var origin = new Origin(at.Syntax, frame.Activation.Site, run.Member);
        var record = Provenance.Enter(part, origin);
        var faults = table.FaultsOf(row).ToList();
        if (faults.Count == 0)
        {
            return;
        }

        foreach (var datum in faults.SelectMany(table.Unknown).Distinct())
        {
            Provenance.SetUnknown(record, datum);
        }

        var more = faults.Count == 1 ? "" : $" (and {FindingText.Count(faults.Count - 1, "more fault")})";
        run.Add(new Problem(ProblemKind.UnreadTable, origin, $"{table.File}({faults[0].Line},{faults[0].Column}) cannot be read: {faults[0].Message}{more}", ""));
    }
}
