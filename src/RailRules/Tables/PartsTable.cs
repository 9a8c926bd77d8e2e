using System.Collections.Immutable;
using System.ComponentModel;

namespace RailRules.Tables;

/// <summary>Marks a class that RailRules generates from a parts table; the analyzer reads the parts from the class's constants.</summary>
/// <param name="version">The version of the constants' form.</param>
/// <param name="file">The table's file name.</param>
[AttributeUsage(AttributeTargets.Class)]
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class PartsTableAttribute(int version, string file) : Attribute
{
    /// <summary>The version of the form of the constants; a reader knows its own and older ones.</summary>
    public int Version { get; } = version;

    /// <summary>The file name of the table.</summary>
    public string File { get; } = file;
}

/// <summary>The parts of a table as the generated class carries them. Not for use by hand: the generated members are.</summary>
/// <typeparam name="T">The record of which the parts are.</typeparam>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class PartsTable<T>
    where T : class
{
    private readonly PartsTableText table;
    private readonly Dictionary<string, TableRow> rows;

    /// <summary>Reads a table from the text that the generator wrote.</summary>
    /// <param name="text">The table in its settled form.</param>
    public PartsTable(string text)
    {
        table = PartsTableText.ReadCanonical(text);
        rows = table.Rows.ToDictionary(row => row.PartNumber, StringComparer.Ordinal);
    }

    /// <summary>The part of a row; a new object each time.</summary>
    /// <param name="row">The row, counted from zero.</param>
    public T At(int row) => (T)table.Make(table.Rows[row]);

    /// <summary>The part with a part number; a new object each time.</summary>
    /// <param name="partNumber">The part number as the table writes it.</param>
    /// <exception cref="KeyNotFoundException">The table has no such part.</exception>
    public T Find(string partNumber) =>
        rows.TryGetValue(partNumber, out var row) ? (T)table.Make(row) : throw new KeyNotFoundException($"The table has no part '{partNumber}'.");

    /// <summary>Every part, in the order of the table; new objects each time.</summary>
    public ImmutableArray<T> All => [.. table.Rows.Select(row => (T)table.Make(row))];
}
