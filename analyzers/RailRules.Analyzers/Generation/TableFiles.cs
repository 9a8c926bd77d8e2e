using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;
using RailRules.Tables;

namespace RailRules.Analyzers.Generation;

/// <summary>Parts tables among a project's additional files. A text is read once, whoever asks: generator or analyzer, this compilation or the next.</summary>
internal static class TableFiles
{
    public const string Suffix = ".parts.csv";

    private static readonly ConditionalWeakTable<SourceText, PartsTableText> Tables = new();

    public static bool IsTable(AdditionalText file) => file.Path.EndsWith(Suffix, StringComparison.OrdinalIgnoreCase);

    public static PartsTableText Read(SourceText text) => Tables.GetValue(text, static source => PartsTableText.Read(source.ToString()));

    /// <summary>Fuses for any/folder/Fuses.parts.csv.</summary>
    public static string NameOf(string path)
    {
        var file = FileOf(path);
        return file.Substring(0, file.Length - Suffix.Length);
    }

    /// <summary>Fuses.parts.csv for any/folder/Fuses.parts.csv, whatever the machine's separator.</summary>
    public static string FileOf(string path) => path.Substring(path.LastIndexOfAny(['/', '\\']) + 1);

    /// <summary>The table that has the name: of several the first by path.</summary>
    public static string FirstOf(IEnumerable<string> paths, string path)
    {
        var name = TableIdentifiers.OfTable(path);
        return paths.Where(other => TableIdentifiers.OfTable(other) == name).OrderBy(other => other, StringComparer.Ordinal).First();
    }
}
