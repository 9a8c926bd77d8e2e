using System.Collections.Immutable;

namespace Programs.ControlFlow.StateMachine;

/// <summary>A small state machine with a switch in a loop.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Results = [.. new[] { "12", "-3.5", "1e5", "1.", "abc", "" }.Select(Scan)];

    private static string Scan(string text)
    {
        var state = State.Start;
        foreach (var c in text + "\0")
        {
            state = (state, c) switch
            {
                (State.Start, '-') => State.Sign,
                (State.Start or State.Sign or State.Whole, >= '0' and <= '9') => State.Whole,
                (State.Whole, '.') => State.Point,
                (State.Point or State.Fraction, >= '0' and <= '9') => State.Fraction,
                (State.Whole or State.Fraction, '\0') => State.Good,
                _ => State.Bad,
            };
            if (state == State.Bad)
                break;
        }

        return $"{text}:{state}";
    }
}

public enum State
{
    Start,
    Sign,
    Whole,
    Point,
    Fraction,
    Good,
    Bad,
}
