using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.VariantsBySwitch;

/// <summary>One helper, several board variants.</summary>
public static class P
{
    public static readonly Rail Eco = For(Variant.Eco);
    public static readonly Rail Full = For(Variant.Full);
    public static readonly ImmutableArray<Rail> All = [For(Variant.Eco), For(Variant.Full), For(Variant.Lab)];

    private static Rail For(Variant variant)
    {
        var amperes = 10.0;
        string name;
        switch (variant)
        {
            case Variant.Eco:
                amperes = 6.3;
                name = "eco";
                break;
            case Variant.Lab:
                amperes *= 1.6;
                goto default;
            default:
                name = variant.ToString().ToLowerInvariant();
                break;
        }

        return new() { Name = name, Path = [new Fuse { RatedCurrent = amperes.Amperes() }] };
    }
}

public enum Variant
{
    Eco,
    Full,
    Lab,
}
