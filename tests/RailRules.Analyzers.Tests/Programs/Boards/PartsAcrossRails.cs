using RailRules;

namespace Programs.Boards.PartsAcrossRails;

/// <summary>One part in many places keeps one identity.</summary>
public static class P
{
    private static readonly Connector Plug = new() { ContactResistance = 1.Milliohms() };
    public static readonly Rail First = new() { Path = [Plug, Plug.As("J1")] };
    public static readonly Rail Second = new() { Path = [Plug] };
    public static readonly bool Same = ReferenceEquals(First.Path[0], Second.Path[0]);
    public static readonly bool NotSame = ReferenceEquals(First.Path[0], First.Path[1]);
    public static readonly bool Equal = First.Path[1] == Plug.As("J1");
}
