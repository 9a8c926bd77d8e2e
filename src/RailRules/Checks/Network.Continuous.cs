using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>Continuous capability I_z of conductors and contacts.</content>
public sealed partial class Network
{
    private HashSet<Rail>? fedRails;

    /// <summary>Rails that some supply, battery or converter feeds.</summary>
    internal HashSet<Rail> FedRails
    {
        get
        {
            if (fedRails is null)
            {
                fedRails = [];
                foreach (var i in downstream)
                {
                    if (suppliers[i].Any(supplying => supplying.From is Rail above ? fedRails.Contains(above) : supplying.From is not null))
                    {
                        fedRails.Add(Rails[i]);
                    }
                }
            }

            return fedRails;
        }
    }

    /// <summary>
    /// I_z (A): wire and busbar by their ampacity as installed; trace by test or IPC-2221; connector by contact rating in the hottest air, summed over n
    /// contacts as rating × (1 + (n − 1) R_min/R_max); others by their rated current. Null where the element has none.
    /// </summary>
    internal Continuous? ContinuousCurrent(Rail rail, Element element, string label)
    {
        switch (element)
        {
            case Wire wire:
                return OfSection(wire.Ampacity?.Amperes, wire.Section?.SquareMeters, element, label);
            case Busbar busbar:
                return OfSection(busbar.Ampacity?.Amperes, busbar.Section?.SquareMeters, element, label);
            case Trace trace:
                return Known(ContinuousCurrent(rail, trace), element, trace.Width is null ? nameof(Trace.Width) : trace.Thickness is null ? nameof(Trace.Thickness) : trace.Inner is null ? nameof(Trace.Inner) : nameof(Trace.Ampacity), label);
            case FuseHolder holder:
                return Known(holder.RatedCurrent?.Amperes, element, nameof(FuseHolder.RatedCurrent), label);
            case Switch contact:
                return Known(contact.RatedCurrent?.Amperes, element, nameof(Switch.RatedCurrent), label);
            case Connector connector:
                return OfContacts(rail, connector, label);
            default:
                return null;
        }
    }

    private static Continuous Known(double? amperes, Element element, string datum, string label) => amperes is { } value
        ? new Continuous(Range.Exactly(value), [])
        : new Continuous(Anything, [new MissingDatum(new DatumPlace(element, datum), label)]);

    /// <summary>A conductor known by its section alone carries no more than the highest density allows.</summary>
    private static Continuous OfSection(double? ampacity, double? section, Element element, string label)
    {
        var known = Known(ampacity, element, nameof(Wire.Ampacity), label);
        return ampacity is null && section is > 0 and var area ? known with { Range = new Range(0, area * Physics.Conductors.HighestDensity) } : known;
    }

    private Continuous OfContacts(Rail rail, Connector connector, string label)
    {
        if (connector.ContactRating is not { } rating || IsUnknown(connector, nameof(Connector.Contacts)))
        {
            return Known(null, connector, connector.ContactRating is null ? nameof(Connector.ContactRating) : nameof(Connector.Contacts), label);
        }

        var margins = PolicyAt(rail, connector.Policy, connector);
        if (UnknownMargin(margins, nameof(DesignPolicy.ConnectorContinuous)) is { } unknown)
        {
            return new Continuous(Anything, [new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var missing = ImmutableArray.CreateBuilder<MissingDatum>();
        var others = Math.Max(1, connector.Contacts ?? 1) - 1;
        var spread = new Range(0, 1);
        if (connector.ContactResistance is { } band && band.Max.Ohms > 0)
        {
            spread = Range.Exactly(Math.Min(1, Math.Max(0, band.Min.Ohms / band.Max.Ohms)));
        }
        else if (others > 0)
        {
            missing.Add(new MissingDatum(new DatumPlace(connector, nameof(Connector.ContactResistance)), label));
        }

        var air = AirAt(rail, connector.Surroundings, connector);
        var points = Items(connector.Derating).Where(point => point is not null).Select(point => (point.Ambient.DegreesCelsius, point.Factor)).OrderBy(point => point.DegreesCelsius).ToArray();
        var factor = Range.Exactly(1);
        if (points.Length > 0)
        {
            var (cool, hot) = (Physics.Derating.Factor(points, air.Hottest.Low), Physics.Derating.Factor(points, air.Hottest.High));
            factor = new Range(Math.Max(0, Math.Min(cool.Low, hot.Low)), Math.Max(0, Math.Max(cool.High, hot.High)));
            if (!factor.IsExact)
            {
                missing.Add(air.Missing is { } place ? new MissingDatum(place, AirLabel(place, label)) : new MissingDatum(new DatumPlace(connector, nameof(Connector.Derating)), label));
            }
        }

        var one = rating.Amperes * margins.Policy.ConnectorContinuous;
        return new Continuous(new Range(one * factor.Low * (1 + (others * spread.Low)), one * factor.High * (1 + (others * spread.High))), missing.ToImmutable());
    }

    /// <summary>A continuous capability (A), and the data without which it is not exact.</summary>
    internal sealed record Continuous(Range Range, ImmutableArray<MissingDatum> Missing);
}
