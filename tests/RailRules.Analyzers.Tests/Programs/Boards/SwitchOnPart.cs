using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.SwitchOnPart;

/// <summary>Text for every kind of element by a type switch.</summary>
public static class P
{
    private static readonly Element[] Elements = [new Fuse { RatedCurrent = 5.Amperes() }, new Wire { Length = 2.Meters() }, new Trace(), new Connector { Contacts = 3 }, new Busbar { Name = "bar" }];
    public static readonly ImmutableArray<string> Texts = [.. Elements.Select(Describe)];
    public static readonly int Protective = Elements.OfType<Fuse>().Count();

    private static string Describe(Element element) => element switch
    {
        Fuse { RatedCurrent: { } rated } => $"fuse {rated.Amperes} A",
        Wire { Length.Meters: > 1 and var meters } => $"long wire {meters}",
        Connector { Contacts: 1 or null } => "single contact",
        Connector { Contacts: var contacts } => $"{contacts} contacts",
        { Name: { Length: > 0 } name } => name,
        _ => "element",
    };
}
