using System.Collections.Immutable;
using UnitsNet;

namespace RailRules;

/// <content>Surroundings and policies, inherited along what feeds a rail.</content>
public sealed partial class Network
{
    /// <summary>Ambient (°C) that is assumed where none is stated: the bounds of an unstated ambient. Common practice, no source.</summary>
    internal const double LowestAmbient = -40;

    /// <summary>See <see cref="LowestAmbient"/>.</summary>
    internal const double HighestAmbient = 85;

    private Inherited[]? inherited;

    /// <summary>The air at a rail, or at a part of it.</summary>
    internal Air AirAt(Rail rail, Surroundings? own = null, object? owner = null)
    {
        var above = Inheritance[indexOf[rail]];
        if (owner is not null && IsUnknown(owner, nameof(Element.Surroundings)))
        {
            var missing = new DatumPlace(owner, nameof(Element.Surroundings));
            return new Air(null, missing, null, missing, above.Air.AltitudePlace);
        }

        return own is null ? above.Air : Merge(own, above.Air);
    }

    /// <summary>The margins for a rail, or for a part of it.</summary>
    internal Margins PolicyAt(Rail rail, DesignPolicy? own = null, object? owner = null)
    {
        var unknown = owner is not null && IsUnknown(owner, nameof(Element.Policy)) ? new DatumPlace(owner, nameof(Element.Policy)) : (DatumPlace?)null;
        return unknown is { } place ? new Margins(DesignPolicy.Default, place) : own is not null ? new Margins(own, null) : Inheritance[indexOf[rail]].Margins;
    }

    /// <summary>Whether a margin of a policy was written but could not be worked out.</summary>
    internal DatumPlace? UnknownMargin(Margins margins, params string[] data)
    {
        if (margins.Unknown is { } unknown)
        {
            return unknown;
        }

        foreach (var datum in data)
        {
            if (IsUnknown(margins.Policy, datum))
            {
                return new DatumPlace(margins.Policy, datum);
            }
        }

        return null;
    }

    private Inherited[] Inheritance => inherited ??= Inherit();

    private Inherited[] Inherit()
    {
        var result = new Inherited[Rails.Length];
        for (var i = 0; i < Rails.Length; i++)
        {
            result[i] = Own(Rails[i], default);
        }

        foreach (var i in downstream)
        {
            var above = suppliers[i]
                .Select(supplying => supplying.From as Rail ?? (supplying.From as Converter)?.Input)
                .FirstOrDefault(rail => rail is not null);
            if (above is not null)
            {
                result[i] = Own(Rails[i], result[indexOf[above]]);
            }
        }

        return result;
    }

    private Inherited Own(Rail rail, Inherited above)
    {
        var nothing = new DatumPlace(rail, nameof(Rail.Surroundings));
        var air = above.Air ?? new Air(null, nothing, null, null, nothing);
        air = IsUnknown(rail, nameof(Rail.Surroundings))
            ? new Air(null, nothing, null, nothing, nothing)
            : rail.Surroundings is { } own ? Merge(own, air) : air;
        var margins = IsUnknown(rail, nameof(Rail.Policy)) ? new Margins(DesignPolicy.Default, new DatumPlace(rail, nameof(Rail.Policy)))
            : rail.Policy is { } policy ? new Margins(policy, null)
            : above.Margins ?? new Margins(DesignPolicy.Default, null);
        return new Inherited(air, margins);
    }

    /// <summary>Each datum where it is stated nearest. The heat of neighbours belongs to the ambient that it is added to.</summary>
    private Air Merge(Surroundings own, Air above)
    {
        var result = above;
        var heatUnknown = IsUnknown(own, nameof(Surroundings.HeatOfNeighbours)) ? new DatumPlace(own, nameof(Surroundings.HeatOfNeighbours)) : (DatumPlace?)null;
        if (own.Ambient is { } ambient)
        {
            var place = new DatumPlace(own, nameof(Surroundings.Ambient));
            var heat = own.HeatOfNeighbours?.Kelvins ?? 0;
            result = result with
            {
                Ambient = new Range(ambient.Min.DegreesCelsius, ambient.Max.DegreesCelsius + heat),
                Heat = heat,
                AmbientPlace = place,
                HeatUnknown = heatUnknown,
            };
        }
        else if (IsUnknown(own, nameof(Surroundings.Ambient)))
        {
            result = result with { Ambient = null, AmbientPlace = new DatumPlace(own, nameof(Surroundings.Ambient)) };
        }
        else if (own.HeatOfNeighbours is { } heat && result.Ambient is { } below)
        {
            result = result with { Ambient = new Range(below.Low, below.High + heat.Kelvins), Heat = result.Heat + heat.Kelvins };
        }

        if (heatUnknown is not null)
        {
            result = result with { HeatUnknown = heatUnknown };
        }

        if (own.Altitude is { } altitude)
        {
            result = result with { Altitude = altitude.Meters, AltitudePlace = new DatumPlace(own, nameof(Surroundings.Altitude)) };
        }
        else if (IsUnknown(own, nameof(Surroundings.Altitude)))
        {
            result = result with { Altitude = null, AltitudePlace = new DatumPlace(own, nameof(Surroundings.Altitude)) };
        }

        return result;
    }

    /// <summary>The air at a place.</summary>
    /// <param name="Ambient">Lowest and highest air temperature (°C), heat of neighbours included; null: unstated.</param>
    /// <param name="AmbientPlace">Where it is stated, or would be.</param>
    /// <param name="Altitude">Altitude (m); null: unstated, from 0 to 2000 m.</param>
    /// <param name="HeatUnknown">The heat of neighbours, where it was written but is unknown.</param>
    /// <param name="AltitudePlace">Where the altitude is stated, or would be.</param>
    internal sealed record Air(Range? Ambient, DatumPlace AmbientPlace, double? Altitude, DatumPlace? HeatUnknown, DatumPlace AltitudePlace)
    {
        /// <summary>What neighbours add to the air (K), contained in <see cref="Ambient"/>.</summary>
        internal double Heat { get; init; }

        /// <summary>Bounds of the highest air temperature (°C).</summary>
        internal Range Hottest => Ambient is { } ambient
            ? new Range(ambient.High, HeatUnknown is null ? ambient.High : double.PositiveInfinity)
            : new Range(LowestAmbient, HighestAmbient);

        /// <summary>The datum that is missing for <see cref="Hottest"/>, if any.</summary>
        internal DatumPlace? Missing => Ambient is null ? AmbientPlace : HeatUnknown;
    }

    /// <summary>A policy, and the datum that hides it if it was written but could not be worked out.</summary>
    internal sealed record Margins(DesignPolicy Policy, DatumPlace? Unknown);

    private readonly record struct Inherited(Air Air, Margins Margins);
}

/// <summary>A lowest and a highest value.</summary>
internal readonly record struct Range(double Low, double High)
{
    internal static Range Exactly(double value) => new(value, value);

    internal bool IsExact => Low == High;
}
