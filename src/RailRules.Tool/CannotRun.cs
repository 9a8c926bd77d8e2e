namespace RailRules.Tool;

/// <summary>The review cannot be made: what, why, and what to do about it.</summary>
internal sealed class CannotRunException(string what, string why, string remedy) : Exception(what)
{
    public string Why { get; } = why;

    public string Remedy { get; } = remedy;
}

/// <summary>Exit codes of the command.</summary>
internal static class ExitCode
{
    public const int Holds = 0;
    public const int Fails = 1;
    public const int Undecided = 2;
    public const int CannotRun = 3;
    public const int MarginLost = 4;
    public const int Interrupted = 130;
}
