using System.Collections.Immutable;

namespace Programs.Classes.Interfaces;

/// <summary>Implicit and explicit implementation, default members.</summary>
public static class P
{
    public static readonly string Implicit = new Lamp().Describe();
    public static readonly string Explicit = ((ISwitch)new Lamp()).Describe();
    public static readonly string Default = ((ISwitch)new Lamp()).Twice();
    public static readonly string Overridden = ((ISwitch)new Relay()).Twice();
    public static readonly string ThroughGeneric = Use(new Lamp()) + Use(new Relay());
    public static readonly int Static = ISwitch.Count;
    public static readonly ImmutableArray<string> All = [.. new ISwitch[] { new Lamp(), new Relay() }.Select(s => s.Twice())];

    private static string Use<T>(T item)
        where T : ISwitch => item.Describe() + item.Twice();
}

public interface ISwitch
{
    static int Count => 2;

    string Describe();

    string Twice() => Describe() + Describe();
}

public sealed class Lamp : ISwitch
{
    public string Describe() => "lamp";

    string ISwitch.Describe() => "switch";
}

public sealed class Relay : ISwitch
{
    public string Describe() => "relay";

    public string Twice() => "two relays";
}
