namespace RailRules.Analyzers.Evaluation;

/// <summary>A problem found while evaluating.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Origin">The innermost expression, with the chain of calls that led there.</param>
/// <param name="Reason">Why, without a final period.</param>
/// <param name="Remedy">What to write instead, without a final period; empty where there is nothing to say.</param>
internal sealed record Problem(ProblemKind Kind, Origin Origin, string Reason, string Remedy);

/// <summary>Kinds of problems of evaluation.</summary>
internal enum ProblemKind
{
    /// <summary>A value that cannot be worked out (RAIL0001).</summary>
    NotComputable,

    /// <summary>The budget is used up (RAIL0002).</summary>
    Budget,

    /// <summary>Evaluated code throws (RAIL0010).</summary>
    Throws,

    /// <summary>A static read before C# gives it a value (RAIL0011).</summary>
    NotInitialised,

    /// <summary>A value of another assembly (RAIL0013).</summary>
    ForeignValue,

    /// <summary>A part of a table whose line cannot be read, or not whole (RAIL0006).</summary>
    UnreadTable,
}
