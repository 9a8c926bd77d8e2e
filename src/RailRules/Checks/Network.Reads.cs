namespace RailRules;

/// <content>Which data the operating point rests on.</content>
public sealed partial class Network
{
    private static readonly HashSet<string> OperatingData =
    [
        nameof(Supply.Voltage), nameof(Battery.OpenCircuitVoltage), nameof(Battery.ChargeVoltage), nameof(Battery.InternalResistance), nameof(Battery.ChargeCurrent), nameof(Battery.Strings),
        nameof(Converter.Output), nameof(Converter.Efficiency), nameof(Converter.InputMinVoltage),
        nameof(Load.Power), nameof(Load.Current), nameof(Load.Resistance), nameof(Load.MinVoltage), nameof(Load.Pulses), nameof(Pulse.Width), nameof(Pulse.Period),
        nameof(Fuse.ColdResistance), nameof(Fuse.VoltageDrop), nameof(Fuse.RatedCurrent), nameof(ResettableFuse.ResistanceAfterTrip), nameof(ElectronicFuse.OnResistance), nameof(BlockingDiode.ForwardDrop),
        nameof(Connector.ContactResistance), nameof(Connector.Contacts), nameof(InrushLimiter.HotResistance), nameof(Wire.Length), nameof(Wire.Section), nameof(Wire.Ampacity), nameof(Wire.TemperatureLimit),
        nameof(Trace.Width), nameof(Trace.Thickness), nameof(Surroundings.Ambient), nameof(Surroundings.HeatOfNeighbours), nameof(Rail.FeedsNeeded),
    ];

    private Dictionary<int, HashSet<object>>? objectsOf;

    internal bool Contains(Rail rail) => indexOf.ContainsKey(rail);

    /// <summary>Whether the currents of a rail rest on a datum: it is one that the operating point reads, of an object of the rail's connected part of the board.</summary>
    internal bool OperatingPointReads(Rail rail, DatumPlace place)
    {
        if (place.Datum is null || !OperatingData.Contains(place.Datum))
        {
            return false;
        }

        var component = ComponentOf;
        if (objectsOf is null)
        {
            objectsOf = [];
            for (var i = 0; i < Rails.Length; i++)
            {
                if (!objectsOf.TryGetValue(component[i], out var objects))
                {
                    objectsOf.Add(component[i], objects = new HashSet<object>(ByReference.Instance));
                }

                objects.UnionWith(ObjectsOf(Rails[i]));
            }
        }

        return objectsOf[component[indexOf[rail]]].Contains(place.Owner);
    }

    private IEnumerable<object> ObjectsOf(Rail rail)
    {
        yield return rail;
        if (rail.Surroundings is { } own)
        {
            yield return own;
        }

        if (rail.Return is { } back)
        {
            yield return back;
        }

        foreach (var supplying in Suppliers(rail))
        {
            if (supplying.From is not null)
            {
                yield return supplying.From;
            }
        }

        foreach (var part in Parts(rail))
        {
            yield return part.Part;
            if (part.Part.Surroundings is { } around)
            {
                yield return around;
            }
        }

        foreach (var load in Items(rail.Loads))
        {
            if (load is not null)
            {
                yield return load;
                foreach (var pulse in Items(load.Pulses))
                {
                    if (pulse is not null)
                    {
                        yield return pulse;
                    }
                }
            }
        }
    }
}
