using RailRules;

namespace Programs.Boards.ExpressionMembers;

/// <summary>Rails as expression-bodied members, made anew each time.</summary>
public static class P
{
    public static readonly Supply Plant = new() { Voltage = 54.Volts() };
    public static Rail Fresh => new() { From = Plant };
    public static bool NotSame => !ReferenceEquals(Fresh, Fresh);
    public static Rail Kept { get; } = Fresh;
    public static bool KeptSame => ReferenceEquals(Kept, Kept) && ReferenceEquals(Kept.From, Plant);
}
