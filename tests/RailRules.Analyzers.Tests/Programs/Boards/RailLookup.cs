using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.RailLookup;

/// <summary>Rails found by name in an array.</summary>
public static class P
{
    private static readonly ImmutableArray<Rail> Rails = [new() { Name = "core" }, new() { Name = "memory" }, new() { Name = "fans" }];
    public static readonly Rail Memory = Find("memory")!;
    public static readonly bool Missing = Find("lamps") is null;
    public static readonly int Index = Rails.IndexOf(Find("fans")!);
    public static readonly bool Same = ReferenceEquals(Memory, Rails[1]);

    private static Rail? Find(string name)
    {
        foreach (var rail in Rails)
        {
            if (rail.Name == name)
                return rail;
        }

        return null;
    }
}
