using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using RailRules.Tables;

namespace RailRules.Analyzers.Generation;

/// <summary>
/// The parts that generated classes carry in their constants, for the evaluator: a part is made from its row, with the reader of the running program. Constants are
/// in the metadata of a compiled assembly too, so that its tables are known as those of the source are.
/// </summary>
internal sealed class GeneratedTables
{
    private const string Attribute = "RailRules.Tables.PartsTableAttribute";

    private static readonly ConditionalWeakTable<string, GeneratedTable> Read = new();
    private readonly Dictionary<INamedTypeSymbol, GeneratedTable?> tables = new(SymbolEqualityComparer.Default);

    /// <summary>Whether the generator made a class from a table.</summary>
    public static bool IsTable(INamedTypeSymbol type) => AttributeOf(type) is not null;

    /// <summary>The table of a generated class; null for other classes, and where the constants are of a newer form.</summary>
    public GeneratedTable? Find(INamedTypeSymbol? type)
    {
        if (type is not { IsStatic: true, ContainingType.Name: TableIdentifiers.Class })
        {
            return null;
        }

        if (!tables.TryGetValue(type, out var found))
        {
            tables[type] = found = Look(type);
        }

        return found;
    }

    private static GeneratedTable? Look(INamedTypeSymbol type)
    {
        if (AttributeOf(type) is not { ConstructorArguments: [{ Value: int version }, { Value: string file }] } || version > PartsTableSource.Version || Constant(type, TableIdentifiers.Text) is not { } text)
        {
            return null;
        }

        // The text is the literal's own, the same object as long as the generated tree is, so that an edit elsewhere reads nothing again.
        var faults = Constant(type, TableIdentifiers.Faults) ?? "";
        var read = Read.GetValue(text, _ => new GeneratedTable(text, faults, file, type.Name));

        // Two classes may share the object of a short text.
        return read.Is(faults, file, type.Name) ? read : new GeneratedTable(text, faults, file, type.Name);
    }

    private static AttributeData? AttributeOf(INamedTypeSymbol type)
    {
        foreach (var attribute in type.GetAttributes())
        {
            if (attribute.AttributeClass is { Name: nameof(PartsTableAttribute) } found && found.ToDisplayString() == Attribute)
            {
                return attribute;
            }
        }

        return null;
    }

    private static string? Constant(INamedTypeSymbol type, string name) => type.GetMembers(name) is [IFieldSymbol { HasConstantValue: true, ConstantValue: string value }] ? value : null;
}

/// <summary>One generated class.</summary>
internal sealed class GeneratedTable
{
    private readonly PartsTableText table;
    private readonly (string Faults, string File, string Name) made;
    private readonly Dictionary<string, TableRow> byMember = new(StringComparer.Ordinal);
    private readonly Dictionary<string, TableRow> byNumber = new(StringComparer.Ordinal);
    private readonly string?[] members;
    private readonly List<CarriedFault> ofAll = [];
    private readonly Dictionary<int, List<CarriedFault>> ofRow = [];

    public GeneratedTable(string text, string faults, string file, string name)
    {
        made = (faults, file, name);
        table = PartsTableText.ReadCanonical(text);
        var names = members = TableIdentifiers.Assign(table, name);
        foreach (var row in table.Rows)
        {
            byNumber.Add(row.PartNumber, row);
            if (names[row.Index] is { } member)
            {
                byMember.Add(member, row);
            }
        }

        foreach (var fault in CarriedFaults.Read(faults))
        {
            if (fault.Row < 0)
            {
                ofAll.Add(fault);
            }
            else if (ofRow.TryGetValue(fault.Row, out var others))
            {
                others.Add(fault);
            }
            else
            {
                ofRow.Add(fault.Row, [fault]);
            }
        }
    }

    /// <summary>The table's file name.</summary>
    public string File => made.File;

    public bool Is(string faults, string file, string name) => made == (faults, file, name);

    public IReadOnlyList<TableRow> Rows => table.Rows;

    public TableRow? OfMember(string name) => byMember.TryGetValue(name, out var row) ? row : null;

    public TableRow? OfPartNumber(string number) => byNumber.TryGetValue(number, out var row) ? row : null;

    /// <summary>The member that gives a part; null where an earlier part has its name.</summary>
    public string? MemberOf(TableRow row) => members[row.Index];

    public object Make(TableRow row) => table.Make(row);

    /// <summary>An array of parts.</summary>
    public object MakeAll()
    {
        var parts = Array.CreateInstance(table.Record!.Type, Rows.Count);
        foreach (var row in Rows)
        {
            parts.SetValue(Make(row), row.Index);
        }

        return parts;
    }

    /// <summary>What could not be read of a part, the table's own faults last.</summary>
    public IEnumerable<CarriedFault> FaultsOf(TableRow row) => ofRow.TryGetValue(row.Index, out var own) ? own.Concat(ofAll) : ofAll;

    /// <summary>The data that a fault makes unknown.</summary>
    public IEnumerable<string> Unknown(CarriedFault fault) =>
        fault.Datum.Length > 0 ? [fault.Datum] : table.Columns.Where(column => column is not null).Select(column => column!.Column.Datum).Distinct();
}
