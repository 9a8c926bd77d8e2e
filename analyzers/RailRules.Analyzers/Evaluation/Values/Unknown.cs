namespace RailRules.Analyzers.Evaluation;

/// <summary>The value that could not be worked out. Whatever depends on it is unknown too.</summary>
internal sealed class Unknown
{
    public static readonly Unknown Value = new();

    private Unknown()
    {
    }
}
