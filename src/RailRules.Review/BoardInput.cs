using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules.Review;

/// <summary>An evaluated board with its checks: all that a review is made from.</summary>
public sealed record BoardInput
{
    /// <summary>The board class's name.</summary>
    public required string Name { get; init; }

    /// <summary>The name with namespace and containing types.</summary>
    public required string FullName { get; init; }

    /// <summary>The project's name.</summary>
    public required string Project { get; init; }

    /// <summary>Where the board is declared.</summary>
    public SourcePlace? At { get; init; }

    /// <summary>The board's rails and those that feed them.</summary>
    public required ImmutableArray<Rail> Rails { get; init; }

    /// <summary>Every check of the board.</summary>
    public required ImmutableArray<Check> Checks { get; init; }

    /// <summary>What the analyzer itself finds: values that could not be worked out, a form that cannot work.</summary>
    public ImmutableArray<BoardFinding> Findings { get; init; } = [];

    /// <summary>The rules of the team's own that were applied.</summary>
    public ImmutableArray<DesignRule> DesignRules { get; init; } = [];

    /// <summary>The compiler's errors; what depends on such an expression is undecided.</summary>
    public ImmutableArray<BoardFinding> CompilerErrors { get; init; } = [];

    /// <summary>What the project says besides its boards, e.g. rails that no board reaches; it counts against no board.</summary>
    public ImmutableArray<BoardFinding> OfProject { get; init; } = [];

    /// <summary>The day on which waivers were judged; null: whether one is past its date was not judged.</summary>
    public DateTime? Today { get; init; }

    /// <summary>Where a datum is written; null: not known.</summary>
    public Func<DatumPlace, SourcePlace?> Written { get; init; } = static _ => null;

    /// <summary>Where a check's finding belongs; null: where its first known place is written.</summary>
    public Func<Check, SourcePlace?>? Belongs { get; init; }

    /// <summary>Whether a datum was written but could not be worked out.</summary>
    public Func<object, string, bool>? IsUnknown { get; init; }

    /// <summary>SHA-256 of the project's source files and parts tables, in hexadecimal.</summary>
    public string Fingerprint { get; init; } = "";

    /// <summary>How many files the fingerprint covers.</summary>
    public int FingerprintFiles { get; init; }
}

/// <summary>A place in a source file.</summary>
/// <param name="File">Path relative to the project, with slashes.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public sealed record SourcePlace(string File, int Line, int Column)
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{File}:{Line}");
}

/// <summary>A finding that is no check of a rail.</summary>
/// <param name="Rule">The rule's id, or the compiler's.</param>
/// <param name="Severity">Its default severity.</param>
/// <param name="Message">One sentence.</param>
/// <param name="At">Where it is shown.</param>
public sealed record BoardFinding(string Rule, RuleSeverity Severity, string Message, SourcePlace? At);
