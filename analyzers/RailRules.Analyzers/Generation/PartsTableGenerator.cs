using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace RailRules.Analyzers.Generation;

/// <summary>
/// Makes <c>Parts.Fuses.Reed20</c> from a line of Fuses.parts.csv. It reports nothing: <see cref="PartsTableAnalyzer"/> does, since editors show what analyzers say.
/// </summary>
[Generator(LanguageNames.CSharp)]
public sealed class PartsTableGenerator : IIncrementalGenerator
{
    /// <summary>Names of the steps, as the driver tracks them.</summary>
    internal static class Steps
    {
        public const string Text = "PartsTableText";
        public const string Owners = "PartsTableOwners";
        public const string Model = "PartsTableModel";
        public const string Place = "PartsTablePlace";
    }

    /// <inheritdoc/>
    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var files = context.AdditionalTextsProvider.Where(TableFiles.IsTable);
        var owners = files.Select((file, _) => file.Path).Collect().Select((paths, _) => Owners(paths)).WithTrackingName(Steps.Owners);
        var models = files.Select((file, cancellation) => new TableInput(file.Path, file.GetText(cancellation))).WithTrackingName(Steps.Text)
            .Select((input, _) => input.Text is null ? null : PartsTableModel.Of(input.Path, TableFiles.Read(input.Text))).WithTrackingName(Steps.Model);
        var space = context.AnalyzerConfigOptionsProvider.Select((options, _) => options.GlobalOptions.TryGetValue("build_property.RootNamespace", out var name) ? Namespace(name) : "");
        var isReferenced = context.CompilationProvider.Select((compilation, _) => compilation.GetTypeByMetadataName("RailRules.Tables.PartsTableAttribute") is not null);
        var place = space.Combine(isReferenced).Combine(owners).Select((pair, _) => new TablePlace(pair.Left.Left, pair.Left.Right, pair.Right)).WithTrackingName(Steps.Place);
        context.RegisterSourceOutput(models.Combine(place), Emit);
    }

    private static void Emit(SourceProductionContext context, (PartsTableModel? Model, TablePlace Place) source)
    {
        if (source.Model is not { } model || !source.Place.IsReferenced)
        {
            return;
        }

        for (var i = 0; i < source.Place.Owners.Count; i++)
        {
            if (source.Place.Owners[i] == model.Path)
            {
                // Names that differ in case alone are two classes, and one file name.
                context.AddSource($"Parts.{i.ToString(CultureInfo.InvariantCulture)}.{model.Class}.g.cs", SourceText.From(PartsTableSource.Of(model, source.Place.Space), Encoding.UTF8));
                return;
            }
        }
    }

    /// <summary>The tables that give a class, in order: of several with one name the first.</summary>
    private static EquatableArray<string> Owners(ImmutableArray<string> paths) =>
        new([.. paths.Distinct().GroupBy(TableIdentifiers.OfTable, StringComparer.Ordinal).Select(group => group.OrderBy(path => path, StringComparer.Ordinal).First()).OrderBy(path => path, StringComparer.Ordinal)]);

    /// <summary>The namespace as C# writes it; empty: the global one, also where the property is no namespace.</summary>
    private static string Namespace(string property)
    {
        var parts = property.Trim().Split('.');
        return Array.TrueForAll(parts, SyntaxFacts.IsValidIdentifier) ? string.Join(".", parts.Select(part => SyntaxFacts.GetKeywordKind(part) == SyntaxKind.None ? part : "@" + part)) : "";
    }

    private sealed record TablePlace(string Space, bool IsReferenced, EquatableArray<string> Owners);

    /// <summary>A file with its text; equal where the characters are.</summary>
    private sealed class TableInput(string path, SourceText? text) : IEquatable<TableInput>
    {
        public string Path { get; } = path;

        public SourceText? Text { get; } = text;

        public bool Equals(TableInput? other) =>
            other is not null && Path == other.Path && (ReferenceEquals(Text, other.Text) || (Text is not null && other.Text is not null && Text.ContentEquals(other.Text)));

        public override bool Equals(object? obj) => Equals(obj as TableInput);

        public override int GetHashCode() => Path.GetHashCode();
    }
}
