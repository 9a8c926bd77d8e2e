using System.Collections.Immutable;

namespace RailRules.Review.Drawings;

/// <summary>A drawing of the review: the picture, what it says in words, and the table behind it.</summary>
public sealed record Drawing
{
    /// <summary>Its id on the page.</summary>
    public required string Id { get; init; }

    /// <summary>What it shows.</summary>
    public required string Title { get; init; }

    /// <summary>What a reader who does not see it needs to know.</summary>
    public required string Description { get; init; }

    /// <summary>The picture: one or several SVG elements.</summary>
    public required string Svg { get; init; }

    /// <summary>Every figure that is drawn.</summary>
    public required DrawingTable Table { get; init; }

    /// <summary>What to read from it, under the picture.</summary>
    public ImmutableArray<string> Captions { get; init; } = [];

    /// <summary>Whether its table lists the points of curves, which paper leaves out.</summary>
    public bool IsPoints { get; init; }
}

/// <summary>The table behind a drawing.</summary>
/// <param name="Caption">What it lists.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">The rows; as many cells as there are columns.</param>
public sealed record DrawingTable(string Caption, ImmutableArray<DrawingColumn> Columns, ImmutableArray<ImmutableArray<DrawingCell>> Rows);

/// <summary>A column of the table behind a drawing.</summary>
/// <param name="Title">Its head.</param>
/// <param name="IsNumber">Whether it holds figures.</param>
public sealed record DrawingColumn(string Title, bool IsNumber = false);

/// <summary>A cell of the table behind a drawing.</summary>
/// <param name="Text">What it shows.</param>
/// <param name="Value">The figure in SI units, where it is one.</param>
public readonly record struct DrawingCell(string Text, double? Value = null)
{
    public static implicit operator DrawingCell(string text) => new(text);

    /// <summary>A figure for people, its nine digits beside it.</summary>
    internal static DrawingCell Of(double value, string unit) => new(Figures.Text(value, unit), value);
}
