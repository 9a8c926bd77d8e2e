using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Generation;

namespace RailRules.Analyzers.Choosing;

/// <summary>A part of a parts table, and how source text names it.</summary>
/// <param name="Part">The part.</param>
/// <param name="PartNumber">Its part number.</param>
/// <param name="Table">The generated class of its table.</param>
/// <param name="File">The table's file name.</param>
/// <param name="Member">The member that gives it; null where an earlier part has that name, and it is found by its number.</param>
internal sealed record TablePart(object Part, string PartNumber, INamedTypeSymbol Table, string File, string? Member)
{
    /// <summary>The expression that gives the part, at a place in the text.</summary>
    public string Expression(SemanticModel model, int position) =>
        Table.ToMinimalDisplayString(model, position) + "." + (Member ?? TableIdentifiers.Find + "(" + Microsoft.CodeAnalysis.CSharp.SymbolDisplay.FormatLiteral(PartNumber, quote: true) + ")");
}

/// <summary>The parts of the tables that a compilation sees: its own and those of the assemblies it refers to.</summary>
internal sealed class TableParts
{
    private TableParts(ImmutableArray<TablePart> all, ImmutableArray<string> files, int unread)
    {
        All = all;
        Files = files;
        Unread = unread;
    }

    /// <summary>The parts, table by table: the compilation's own tables first, in the order of their names.</summary>
    public ImmutableArray<TablePart> All { get; }

    /// <summary>The tables' file names.</summary>
    public ImmutableArray<string> Files { get; }

    /// <summary>Parts left out because data of theirs cannot be read (RAIL0006).</summary>
    public int Unread { get; }

    /// <summary>The parts that are of the same record as one that stands in a place.</summary>
    public IEnumerable<TablePart> LikeIt(object part) => All.Where(one => one.Part.GetType() == part.GetType());

    public static TableParts Of(Compilation compilation, CancellationToken cancellation)
    {
        var parts = ImmutableArray.CreateBuilder<TablePart>();
        var files = ImmutableArray.CreateBuilder<string>();
        var unread = 0;
        var tables = new GeneratedTables();
        foreach (var assembly in Assemblies(compilation))
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var type in Tables(assembly.GlobalNamespace).Where(type => compilation.IsSymbolAccessibleWithin(type, compilation.Assembly)).OrderBy(type => type.ToDisplayString(), StringComparer.Ordinal))
            {
                if (tables.Find(type) is not { } table)
                {
                    continue;
                }

                files.Add(table.File);
                foreach (var row in table.Rows)
                {
                    if (table.FaultsOf(row).Any())
                    {
                        unread++;
                    }
                    else
                    {
                        parts.Add(new TablePart(table.Make(row), row.PartNumber, type, table.File, table.MemberOf(row)));
                    }
                }
            }
        }

        return new TableParts(parts.ToImmutable(), files.ToImmutable(), unread);
    }

    private static IEnumerable<IAssemblySymbol> Assemblies(Compilation compilation)
    {
        yield return compilation.Assembly;
        foreach (var assembly in compilation.SourceModule.ReferencedAssemblySymbols)
        {
            if (assembly.Modules.Any(module => module.ReferencedAssemblies.Any(name => name.Name == "RailRules")))
            {
                yield return assembly;
            }
        }
    }

    private static IEnumerable<INamedTypeSymbol> Tables(INamespaceSymbol root)
    {
        var pending = new Stack<INamespaceSymbol>();
        pending.Push(root);
        while (pending.Count > 0)
        {
            var space = pending.Pop();
            foreach (var inner in space.GetNamespaceMembers())
            {
                pending.Push(inner);
            }

            foreach (var table in space.GetTypeMembers(TableIdentifiers.Class).SelectMany(type => type.GetTypeMembers()).Where(GeneratedTables.IsTable))
            {
                yield return table;
            }
        }
    }
}
