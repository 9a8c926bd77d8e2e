using System.Collections.Immutable;

namespace Programs.Enums.Arithmetic;

/// <summary>Plus, minus and increments on enumeration values.</summary>
public static class P
{
    public static readonly Step Next = Step.First + 1;
    public static readonly Step Before = Step.Third - 1;
    public static readonly int Distance = Step.Third - Step.First;
    public static readonly Step Incremented = Advance(Step.First, 2);
    public static readonly ImmutableArray<Step> All = [.. Enumerable.Range((int)Step.First, 3).Select(i => (Step)i)];
    public static readonly bool Equal = Step.First + 2 == Step.Third;

    private static Step Advance(Step step, int by)
    {
        for (var i = 0; i < by; i++)
            step++;
        return step;
    }
}

public enum Step
{
    First = 1,
    Second,
    Third,
}
