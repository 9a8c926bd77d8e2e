using RailRules;

namespace Programs.Boards.BuilderClass;

/// <summary>A small builder class for rails.</summary>
public static class P
{
    public static readonly Rail Bus = new RailBuilder("Bus").Rated(63).Over(2.5, 4).Drawing(900).Build();
    public static readonly Rail Bare = new RailBuilder("Bare").Build();
    public static readonly int Elements = Bus.Path.Length;
}

public sealed class RailBuilder(string name)
{
    private readonly List<Element> path = [];
    private double watts;
    private int fuses;

    public RailBuilder Rated(double amperes)
    {
        path.Insert(fuses, new Fuse { RatedCurrent = amperes.Amperes() }.As($"F{++fuses}"));
        return this;
    }

    public RailBuilder Over(params double[] milliohms)
    {
        foreach (var value in milliohms)
            path.Add(new Trace { Resistance = value.Milliohms() });
        return this;
    }

    public RailBuilder Drawing(double power)
    {
        watts += power;
        return this;
    }

    public Rail Build() => new() { Name = name, Path = [.. path], Loads = watts > 0 ? [new() { Power = watts.Watts() }] : [] };
}
