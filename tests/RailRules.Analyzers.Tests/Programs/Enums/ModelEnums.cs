using System.Collections.Immutable;
using RailRules;

namespace Programs.Enums.ModelEnums;

/// <summary>Enumerations of the model library.</summary>
public static class P
{
    public static readonly Joint Soldered = Joint.Soldered;
    public static readonly string Text = Joint.BoltedLocked.ToString();
    public static readonly string Interpolated = $"{Flammability.V0} {RatingBasis.CarriesThreeQuarters:D}";
    public static readonly bool Better = Flammability.V0 < Flammability.V1;
    public static readonly ImmutableArray<CurrentKind> Kinds = [CurrentKind.Dc, CurrentKind.Ac];
    public static readonly int Value = (int)Joint.Clip;
    public static readonly Joint Cast = (Joint)1;
    public static readonly string Switched = Joint.Clip switch { Joint.Soldered or Joint.Welded => "fixed", _ => "loose" };
    public static readonly DayOfWeek Day = (DayOfWeek)3;
    public static readonly string FlammabilityOf = ((Flammability?)null)?.ToString() ?? "not stated";
}
