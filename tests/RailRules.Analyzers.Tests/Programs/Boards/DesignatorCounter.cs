using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.DesignatorCounter;

/// <summary>Designators counted by a closure.</summary>
public static class P
{
    public static readonly ImmutableArray<Element> Path = Build();

    private static ImmutableArray<Element> Build()
    {
        var next = 1;
        string Designator(char letter) => $"{letter}{next++}";
        var fuse = new Fuse { RatedCurrent = 10.Amperes() };
        return [fuse.As(Designator('F')), new Trace(), new Connector().As(Designator('J')), fuse.As(Designator('F'))];
    }
}
