using System.Collections.Immutable;

namespace Programs.Nullables.ThreeValuedLogic;

/// <summary>And and or over absent bools.</summary>
public static class P
{
    private static readonly bool?[] All = [true, false, null];
    public static readonly ImmutableArray<bool?> And = [.. from a in All from b in All select a & b];
    public static readonly ImmutableArray<bool?> Or = [.. from a in All from b in All select a | b];
    public static readonly ImmutableArray<bool?> Xor = [.. from a in All from b in All select a ^ b];
    public static readonly ImmutableArray<bool?> Not = [.. All.Select(a => !a)];
    public static readonly int Count = All.Count(a => a == true) + All.Count(a => a != true) * 10 + All.Count(a => a ?? true) * 100;
}
