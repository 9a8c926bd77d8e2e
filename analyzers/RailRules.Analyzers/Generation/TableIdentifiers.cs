using System.Text;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Tables;

namespace RailRules.Analyzers.Generation;

/// <summary>
/// From part numbers to the names of members: an underscore stands for each character that C# does not allow, and before a leading digit, a keyword and a name that
/// the generated class has already. Generator, analyzer and evaluator name with this class.
/// </summary>
internal static class TableIdentifiers
{
    public const string Find = "Find";
    public const string All = "All";
    public const string At = "At";
    public const string Reader = "TableReader";
    public const string Text = "TableText";
    public const string Faults = "TableFaults";
    public const string Class = "Parts";

    private static readonly HashSet<string> Taken = new(StringComparer.Ordinal)
    {
        Find, All, At, Reader, Text, Faults,
        nameof(Equals), nameof(GetHashCode), nameof(ToString), nameof(GetType), nameof(ReferenceEquals), nameof(MemberwiseClone), "Finalize",
    };

    /// <summary>The class of a table: Fuses for Fuses.parts.csv.</summary>
    public static string OfTable(string path) => Of(TableFiles.NameOf(path), Class);

    /// <summary>The member of a part in the class of its table.</summary>
    public static string OfPart(string partNumber, string tableClass) => Of(partNumber, tableClass);

    /// <summary>The member of each part; null where an earlier part has the same.</summary>
    public static string?[] Assign(PartsTableText table, string tableClass)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var names = new string?[table.Rows.Count];
        for (var i = 0; i < names.Length; i++)
        {
            var name = OfPart(table.Rows[i].PartNumber, tableClass);
            names[i] = seen.Add(name) ? name : null;
        }

        return names;
    }

    private static string Of(string text, string containing)
    {
        var name = new StringBuilder(text.Length + 1);
        foreach (var c in text)
        {
            name.Append(char.IsLetterOrDigit(c) || c == '_' ? c : '_');
        }

        if (name.Length == 0 || !SyntaxFacts.IsIdentifierStartCharacter(name[0]))
        {
            name.Insert(0, '_');
        }

        var made = name.ToString();
        return made == containing || Taken.Contains(made) || SyntaxFacts.GetKeywordKind(made) != SyntaxKind.None || made.StartsWith("get_", StringComparison.Ordinal) || made.StartsWith("set_", StringComparison.Ordinal)
            ? "_" + made
            : made;
    }
}
