using RailRules.Physics;

namespace RailRules.Rules;

/// <summary>What a fuse bears of a pulse that comes back: a share of its melting I²t for the number of pulses in its life, or of its melting edge where the pulse is long.</summary>
internal sealed class PulseLimit
{
    /// <summary>Bounds of an unstated number of starts. Common practice, no source.</summary>
    private static readonly Range UnstatedStarts = new(1, 100_000);

    private readonly TimeCurrentCurve? edge;
    private readonly double adiabatic;
    private readonly MissingDatum melting;
    private readonly MissingDatum curve;

    private PulseLimit(Network network, Network.PartPlace place, Fuse fuse, DesignPolicy policy)
    {
        adiabatic = policy.AdiabaticLimit.Seconds;
        melting = new MissingDatum(new DatumPlace(fuse, nameof(Fuse.MeltingIntegral)), place.Label);
        curve = new MissingDatum(new DatumPlace(fuse, nameof(Fuse.Curve)), place.Label);
        edge = EdgeOf(fuse);
        FindStarts(network, place);
        FindShare(network, place, fuse, policy);
        if (fuse.MeltingIntegral is { } band)
        {
            // The shares were drawn for the nominal value; of a band without one the lowest counts.
            Melting = (band.Typical ?? band.Min).AmpereSquaredSeconds;
            Working.Add(new WorkingStep("melting I²t", "", "", new Figure(Melting.Value, "A²s"), band.Typical is null ? "data of the part, lowest" : "data of the part, nominal", melting.Place));
        }
    }

    /// <summary>Number of starts in life.</summary>
    internal Range Starts { get; private set; }

    /// <summary>Share of the melting I²t that each start may use: at the most and at the fewest starts.</summary>
    internal Range Share { get; private set; }

    /// <summary>Nominal melting I²t (A²s); null: not stated.</summary>
    internal double? Melting { get; }

    internal List<MissingDatum> Missing { get; } = [];

    internal List<WorkingStep> Working { get; } = [];

    internal List<string> Assumptions { get; } = [];

    internal static PulseLimit Of(Network network, Network.PartPlace place, Fuse fuse, DesignPolicy policy) => new(network, place, fuse, policy);

    /// <summary>"10000 starts", at the end that decides.</summary>
    internal string StartsText(bool most) => $"{Figures.Digits(most ? Starts.High : Starts.Low)} start{((most ? Starts.High : Starts.Low) == 1 ? "" : "s")}";

    /// <summary>Demand and capacity of a pulse known by its two ends: as I²t where it is short at both, else as current.</summary>
    internal (Range Demand, Range Capacity, string Unit, string Datum, IEnumerable<MissingDatum> Missing) Within(Network.InrushEnd most, Network.InrushEnd least)
    {
        if (most.EqualTime <= adiabatic && least.EqualTime <= adiabatic)
        {
            return Melting is { } nominal
                ? (new Range(least.Integral, most.Integral), new Range(Share.Low * nominal, Share.High * nominal), "A²s", nameof(Fuse.MeltingIntegral), [])
                : (new Range(least.Integral, most.Integral), new Range(0, double.PositiveInfinity), "A²s", nameof(Fuse.MeltingIntegral), [melting]);
        }

        var (worst, best) = (CurrentFor(most.EqualTime), CurrentFor(least.EqualTime));
        var missing = edge is null ? Melting is null ? new[] { melting, curve } : [curve] : Melting is null ? [melting] : Array.Empty<MissingDatum>();
        return (new Range(least.Peak, most.Peak), new Range(Math.Sqrt(Share.Low) * worst.Low, best.High == 0 ? 0 : Math.Sqrt(Share.High) * best.High), "A", nameof(Fuse.Curve), missing);
    }

    /// <summary>The current (A) that just does not melt it within a time: by the melting edge, or below the adiabatic limit by the melting I²t, which is a lower bound above it.</summary>
    private Range CurrentFor(double time)
    {
        if (time <= 0)
        {
            return new Range(double.PositiveInfinity, double.PositiveInfinity);
        }

        if (time > adiabatic && edge is not null)
        {
            return Range.Exactly(edge.LargestCarried(time));
        }

        var byIntegral = Melting is { } nominal ? Math.Sqrt(nominal / time) : 0;
        return new Range(byIntegral, Melting is null || time > adiabatic ? double.PositiveInfinity : byIntegral);
    }

    /// <summary>The edge for "must not open" of a fuse: its curve, else the gates of its family; null: neither.</summary>
    private static TimeCurrentCurve? EdgeOf(Fuse fuse)
    {
        var drawn = TimeCurrentCurve.Of(Network.Items(fuse.Curve).Where(point => point is not null).Select(point => (point.Current.Amperes, point.MinimumMelting?.Seconds, point.MaximumClearing?.Seconds)));
        if (drawn.HasMelting)
        {
            return drawn;
        }

        var gates = fuse is { Characteristic: { } family, RatedCurrent: { } rated } ? TimeCurrentCurve.Of(StandardGates.Of(family, rated.Amperes), rated.Amperes) : null;
        return gates is { HasMelting: true } ? gates : null;
    }

    /// <summary>The largest number that a load behind the fuse states; the others start with it.</summary>
    private void FindStarts(Network network, Network.PartPlace place)
    {
        var loads = network.LoadsBehind(place);
        var hidden = loads.Where(one => network.IsUnknown(one.Load, nameof(Load.StartsInLife))).ToList();
        var stated = loads.Where(one => one.Load.StartsInLife is not null).OrderByDescending(one => one.Load.StartsInLife).ToList();
        if (hidden.Count > 0 || stated.Count == 0)
        {
            var least = stated.Count > 0 ? Math.Max(1, stated[0].Load.StartsInLife!.Value) : UnstatedStarts.Low;
            Starts = new Range(least, Math.Max(least, hidden.Count > 0 ? double.PositiveInfinity : UnstatedStarts.High));
            var whose = hidden.Count > 0 ? hidden : loads.Where(one => one.Load.InputCapacitance is not null).DefaultIfEmpty(loads.FirstOrDefault()).Where(one => one.Load is not null);
            Missing.AddRange(whose.Select(one => new MissingDatum(new DatumPlace(one.Load, nameof(Load.StartsInLife)), one.Label)));
            if (Missing.Count == 0)
            {
                Missing.Add(new MissingDatum(new DatumPlace(place.Rail, nameof(Rail.Loads)), Network.Label(place.Rail)));
            }

            Working.Add(new WorkingStep("starts in life", "", $"{Figures.Digits(Starts.Low)} to {Figures.Digits(Starts.High)}", new Figure(Starts.High, ""), "not stated: 1 to 100 000 (common practice)", hidden.Count > 0 ? Missing[0].Place : null));
            return;
        }

        Starts = Range.Exactly(Math.Max(1, stated[0].Load.StartsInLife!.Value));
        Working.Add(new WorkingStep("starts in life", "", "", new Figure(Starts.High, ""), $"data of '{stated[0].Label}'", new DatumPlace(stated[0].Load, nameof(Load.StartsInLife))));
    }

    private void FindShare(Network network, Network.PartPlace place, Fuse fuse, DesignPolicy policy)
    {
        var life = new DatumPlace(fuse, nameof(Fuse.PulseLife));
        if (network.IsUnknown(fuse, nameof(Fuse.PulseLife)))
        {
            Share = new Range(0, double.PositiveInfinity);
            Missing.Add(new MissingDatum(life, place.Label));
            return;
        }

        var own = Points(fuse.PulseLife);
        var points = own.Count > 0 ? own : Points(policy.PulseShare);
        var few = PulseEndurance.Share(points, Starts.Low);
        var many = PulseEndurance.Share(points, Starts.High);
        var last = points.Count > 0 ? points[points.Count - 1].Share : 1;
        Share = new Range(many ?? 0, few ?? last);
        if (many is null)
        {
            Missing.Add(new MissingDatum(life, place.Label));
        }

        Working.Add(new WorkingStep(
            "share of the melting I²t for each start", "", Share.IsExact ? "" : $"{Figures.Digits(Share.Low)} to {Figures.Digits(Share.High)}", new Figure(Share.Low, ""),
            own.Count > 0 ? "pulse life of the part, straight lines on log N" : Network.PolicySource(policy, nameof(DesignPolicy.PulseShare)) + ", straight lines on log N", own.Count > 0 ? life : new DatumPlace(policy, nameof(DesignPolicy.PulseShare))));
    }

    private static List<(double Pulses, double Share)> Points(System.Collections.Immutable.ImmutableArray<PulseLifePoint> points) =>
        [.. Network.Items(points).Where(point => point is not null).Select(point => (point.Starts, point.Share)).OrderBy(point => point.Starts)];
}
