namespace RailRules.Analyzers.Evaluation;

/// <summary>
/// Ways out of an evaluation. They travel as exceptions because they must pass through library code (LINQ) that calls interpreted lambdas.
/// None leaves the evaluation of a member.
/// </summary>
internal abstract class Signal : Exception;

/// <summary>The budget is used up; the problem is recorded.</summary>
internal sealed class BudgetSignal : Signal;

/// <summary>What follows depends on something unknown, so that the whole member is unknown; the cause is recorded.</summary>
internal sealed class RefusedSignal : Signal;

/// <summary>A condition in a body is unknown: what the body gives is unknown, and what it does too; the cause is recorded.</summary>
internal sealed class UndecidedSignal : Signal;

/// <summary>An interpreted lambda gave library code an unknown value; the call of the library gives an unknown value.</summary>
internal sealed class UnknownSignal(bool effects) : Signal
{
    /// <summary>Whether lambdas that are now skipped could have changed something.</summary>
    public bool Effects { get; } = effects;
}

/// <summary>An exception of the evaluated program.</summary>
internal sealed class ThrowSignal(string type, string text, Origin origin) : Signal
{
    /// <summary>Full name of the exception's type.</summary>
    public string Type { get; } = type;

    /// <summary>The exception's message.</summary>
    public string Text { get; } = text;

    /// <summary>Where it was thrown.</summary>
    public Origin Origin { get; } = origin;
}
