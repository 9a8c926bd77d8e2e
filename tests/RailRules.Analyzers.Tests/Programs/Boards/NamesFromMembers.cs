using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.NamesFromMembers;

/// <summary>Sources and parts take the name of the member that makes them.</summary>
public static class P
{
    public static readonly Supply Plant = new() { Voltage = 54.Volts() };
    public static readonly Rail Bus = new() { From = Plant };
    public static readonly Rail Named = new() { From = Bus, Name = "named by hand" };
    public static Rail Property { get; } = new() { From = Bus };
    public static readonly ImmutableArray<string> Names = [Plant.Name, Bus.Name, Named.Name, Property.Name, Make().Name, InArray[0].Name];
    public static readonly Rail FromHelper = Make();
    public static ImmutableArray<Rail> InArray => [new() { From = Plant }, Make()];
    public static readonly string Text = $"{Bus} fed by {Plant}";

    private static Rail Make() => new() { From = Plant };
}
