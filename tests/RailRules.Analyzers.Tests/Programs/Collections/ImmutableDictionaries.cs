using System.Collections.Immutable;

namespace Programs.Collections.ImmutableDictionaries;

/// <summary>Dictionaries and lists that never change.</summary>
public static class P
{
    private static readonly ImmutableDictionary<string, int> Base = ImmutableDictionary<string, int>.Empty.Add("a", 1).Add("b", 2);
    public static readonly int A = Base["a"];
    public static readonly int Changed = Base.SetItem("a", 5)["a"];
    public static readonly int Count = Base.Remove("a").Count;
    public static readonly bool Has = Base.ContainsKey("b");
    public static readonly ImmutableDictionary<int, char> Made = "xyz".Select((c, i) => (c, i)).ToImmutableDictionary(p => p.i, p => p.c);
    public static readonly ImmutableList<int> List = ImmutableList.Create(1, 2).Add(3).RemoveAt(0);
    public static readonly string Sorted = string.Join(',', Base.OrderBy(p => p.Value).Select(p => p.Key + p.Value));
}
