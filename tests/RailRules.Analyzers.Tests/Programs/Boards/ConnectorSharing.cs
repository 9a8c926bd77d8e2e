using RailRules;
using UnitsNet;

namespace Programs.Boards.ConnectorSharing;

/// <summary>Contacts in parallel and their derating.</summary>
public static class P
{
    public static readonly Connector Power = Make(contacts: 4, perContact: 13);
    public static readonly Connector Signal = Make(2, 3);
    public static readonly ElectricCurrent All = Carries(Power);
    public static readonly ElectricCurrent Few = Carries(Signal);

    private static Connector Make(int contacts, double perContact) => new()
    {
        Contacts = contacts,
        ContactRating = perContact.Amperes(),
        ContactResistance = Band.Of((0.5 / Math.Sqrt(contacts)).Milliohms(), 2.Milliohms()),
        Derating = [new(20.Celsius(), 1), new(70.Celsius(), 0.8), new(105.Celsius(), 0)],
    };

    private static ElectricCurrent Carries(Connector connector) => (connector.Contacts ?? 1) * (connector.ContactRating ?? ElectricCurrent.Zero) * 0.8;
}
