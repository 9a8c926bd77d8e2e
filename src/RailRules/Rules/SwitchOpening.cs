using UnitsNet;

namespace RailRules.Rules;

/// <summary>
/// What an electronic switch meets when it opens: V_high + I sqrt(L/C_in), or the clamp's voltage at that current. Circuit theory.
/// A switch with a stated avalanche energy bears the surge by itself: RAIL0403 judges the energy, RAIL0101 the others. Relays and contactors arc instead.
/// </summary>
internal sealed class SwitchOpening
{
    private const double LoopInductancePerMeter = 2e-6;
    private const double CompactInductance = 50e-9;

    /// <summary>The voltage it can meet (V).</summary>
    internal Range Voltage { get; private set; }

    /// <summary>The current that it opens (A).</summary>
    internal Range Current { get; private set; }

    /// <summary>The inductance from source to switch (H).</summary>
    internal Range Inductance { get; private set; }

    /// <summary>Whether a clamp stands above the switch.</summary>
    internal bool IsClamped { get; private set; }

    internal List<WorkingStep> Working { get; } = [];

    internal List<MissingDatum> Missing { get; } = [];

    internal static SwitchOpening? Of(Network network, Network.PartPlace place)
    {
        var isElectronic = place.Part is ElectronicFuse or Switch { SafeOperatingArea: not null } or Switch { AvalancheEnergy: not null };
        if (!isElectronic || !network.VoltagesOf(place.Rail).High.IsKnown)
        {
            return null;
        }

        var opening = new SwitchOpening();
        opening.Solve(network, place);
        return opening;
    }

    private void Solve(Network network, Network.PartPlace place)
    {
        var high = network.VoltagesOf(place.Rail).High.Value;
        var inductance = InductanceTo(network, place);
        var current = CurrentOf(network, place, high, inductance);
        (Inductance, Current) = (inductance, current);
        var above = network.Suppliers(place.Rail).FirstOrDefault(supplying => place.Supplier < 0 || ReferenceEquals(supplying.Feed, place.Feed)).From;
        Voltage = new Range(high, double.PositiveInfinity);
        if (above is Rail upstream && Network.Items(upstream.Clamps).FirstOrDefault(one => one is not null) is { } clamp)
        {
            IsClamped = true;
            var label = Network.Label(clamp, upstream, 0);
            if (ClampAt(clamp, current.High) is { } held)
            {
                Voltage = new Range(high, Math.Max(high, held));
                Working.Add(new WorkingStep("clamp at the current that is opened", "V_BR + R_d I", "", new Figure(held, "V"), $"'{label}' above the switch", new DatumPlace(clamp, nameof(TransientSuppressor.ClampingVoltage))));
                if (ClampAt(clamp, current.Low) is { } least)
                {
                    Voltage = new Range(Math.Max(high, Math.Min(least, held)), Voltage.High);
                }
            }
            else
            {
                Missing.Add(new MissingDatum(new DatumPlace(clamp, nameof(TransientSuppressor.ClampingVoltage)), label));
            }

            return;
        }

        var capacitance = CapacitanceAt(above);
        if (capacitance <= 0)
        {
            Missing.Add(new MissingDatum(new DatumPlace(place.Part, nameof(ElectronicFuse.AvalancheEnergy)), place.Label));
            return;
        }

        var most = double.IsInfinity(current.High) || double.IsInfinity(inductance.High) ? double.PositiveInfinity : high + (current.High * Math.Sqrt(inductance.High / capacitance));
        Voltage = new Range(high + (double.IsInfinity(current.Low) ? 0 : current.Low * Math.Sqrt(inductance.Low / capacitance)), most);
        if (double.IsInfinity(most))
        {
            return;
        }

        Working.Add(new WorkingStep("current that is opened", "", "", new Figure(current.High, "A"), "trip level, and what flows until it has opened"));
        Working.Add(new WorkingStep("inductance up to the switch", "", "", new Figure(inductance.High, "H"), "source and path above the switch"));
        Working.Add(new WorkingStep(
            "opening surge", "V + I sqrt(L / C)", $"{Figures.Text(high, "V")} + {Figures.Text(current.High, "A")} × sqrt({Figures.Text(inductance.High, "H")} / {Figures.Text(capacitance, "F")})", new Figure(most, "V"), "circuit theory"));
    }

    private Range CurrentOf(Network network, Network.PartPlace place, double high, Range inductance)
    {
        if (place.Part is not ElectronicFuse electronic)
        {
            var flow = network.CurrentOf(place);
            Missing.AddRange(flow.IsExact ? [] : network.MissingFor([place.Rail]));
            return flow.Reason == Network.FlowReason.Solved ? new Range(flow.Low, flow.High) : new Range(0, double.PositiveInfinity);
        }

        var level = (electronic.ShortCircuitLevel ?? electronic.TripLevel)?.Max.Amperes;
        if (level is not { } amperes)
        {
            Missing.Add(new MissingDatum(new DatumPlace(electronic, nameof(ElectronicFuse.TripLevel)), place.Label));
            return new Range(0, double.PositiveInfinity);
        }

        if (electronic.ShortCircuitResponse is not { } response)
        {
            Missing.Add(new MissingDatum(new DatumPlace(electronic, nameof(ElectronicFuse.ShortCircuitResponse)), place.Label));
            return new Range(amperes, double.PositiveInfinity);
        }

        // What the voltage drives through the inductance until it has opened.
        var seconds = response.Max.Seconds;
        double Rise(double henries) => seconds <= 0 || double.IsInfinity(henries) ? 0 : henries > 0 ? high / henries * seconds : double.PositiveInfinity;
        return new Range(amperes + Rise(inductance.High), amperes + Rise(inductance.Low));
    }

    /// <summary>Inductance (H) from the source to the switch, behind no nearer capacitor; bounds where elements do not state it.</summary>
    private Range InductanceTo(Network network, Network.PartPlace place)
    {
        double low = 0, high = 0;
        Add(Network.Items(place.Feed is { } feed ? feed.Path : place.Rail.Path), place.Rail, place.Place.Index ?? 0);
        var source = network.Suppliers(place.Rail).FirstOrDefault(supplying => place.Supplier < 0 || ReferenceEquals(supplying.Feed, place.Feed)).From;
        var seen = new HashSet<Source>();
        while (source is Rail rail && seen.Add(rail))
        {
            var path = Network.Items(rail.Path);
            Add(path, rail, path.Length);
            source = network.Suppliers(rail).FirstOrDefault().From;
        }

        switch (source)
        {
            case Supply { SourceInductance: { } inside }:
                (low, high) = (low + inside.Min.Henries, high + inside.Max.Henries);
                break;
            case Supply { ProspectiveFault: { Current: { } current, TimeConstant: { } constant }, Voltage: { } volts } when current.Min.Amperes > 0:
                // L = τ R, and R = V / I.
                (low, high) = (low + (constant.Seconds * volts.Max.Volts / current.Max.Amperes), high + (constant.Seconds * volts.Max.Volts / current.Min.Amperes));
                break;
            case Battery { InternalInductance: { } inside }:
                (low, high) = (low + inside.Min.Henries, high + inside.Max.Henries);
                break;
            case Supply { OutputCapacitance: not null } or Converter { OutputCapacitance: not null }:
                break;
            case Supply or Battery:
                high = double.PositiveInfinity;
                Missing.Add(new MissingDatum(new DatumPlace(source, source is Supply ? nameof(Supply.SourceInductance) : nameof(Battery.InternalInductance)), Network.Label(source)));
                break;
            default:
                high = double.PositiveInfinity;
                Missing.Add(new MissingDatum(new DatumPlace((object?)source ?? place.Rail, source is null ? nameof(Rail.From) : nameof(Converter.OutputCapacitance)), source is null ? Network.Label(place.Rail) : Network.Label(source)));
                break;
        }

        return new Range(low, high);

        void Add(IReadOnlyList<Element> path, Rail rail, int count)
        {
            for (var i = 0; i < count && i < path.Count; i++)
            {
                if (path[i] is not { } element)
                {
                    continue;
                }

                var length = element switch
                {
                    Wire wire => wire.Length,
                    Trace trace => trace.Length,
                    Busbar busbar => busbar.Length,
                    _ => null,
                };
                if (element.Inductance is { } stated)
                {
                    (low, high) = (low + stated.Min.Henries, high + stated.Max.Henries);
                }
                else if (length is { } far)
                {
                    (low, high) = (low + (LoopInductancePerMeter / 10 * far.Meters), high + (LoopInductancePerMeter * far.Meters));
                }
                else if (element is Wire or Trace or Busbar or Inductor)
                {
                    high = double.PositiveInfinity;
                    Missing.Add(new MissingDatum(new DatumPlace(element, element is Inductor ? nameof(Element.Inductance) : nameof(Wire.Length)), Network.Label(element, rail, i)));
                }
                else
                {
                    high += CompactInductance;
                }
            }
        }
    }

    /// <summary>The least capacitance (F) at the input of the switch.</summary>
    private static double CapacitanceAt(Source? above) => above switch
    {
        Rail rail => Network.Items(rail.Capacitors).Sum(one => one?.Capacitance?.Min.Farads ?? 0) + Network.Items(rail.Loads).Sum(one => one?.InputCapacitance?.Min.Farads ?? 0),
        Supply supply => supply.OutputCapacitance?.Min.Farads ?? 0,
        Converter converter => converter.OutputCapacitance?.Min.Farads ?? 0,
        _ => 0,
    };

    /// <summary>The highest voltage (V) of a hot clamp at a current (A).</summary>
    private static double? ClampAt(TransientSuppressor clamp, double current)
    {
        if (double.IsInfinity(current))
        {
            return null;
        }

        var breakdown = (clamp.BreakdownVoltageHot ?? clamp.BreakdownVoltage?.Max)?.Volts;
        var (voltage, pulse) = (clamp.ClampingVoltage?.Voltage?.Volts, clamp.ClampingVoltage?.Current?.Amperes);
        var resistance = clamp.DynamicResistance?.Ohms ?? (voltage is { } clamped && pulse is > 0 and var amperes && breakdown is { } starts ? Math.Max(0, (clamped - starts) / amperes) : null);
        return breakdown + (resistance * current) ?? (voltage is { } most && pulse is { } upTo && current <= upTo ? most : null);
    }
}
