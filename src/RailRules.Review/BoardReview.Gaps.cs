using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using UnitsNet;

namespace RailRules.Review;

/// <content>What is missing, what was assumed, and by which margins.</content>
public sealed partial class BoardReview
{
    private void ReadGaps()
    {
        var missing = new Dictionary<DatumPlace, (MissingDatum Datum, List<ReviewedCheck> Checks)>();
        var assumptions = new Dictionary<string, List<ReviewedCheck>>(StringComparer.Ordinal);
        foreach (var check in Checks)
        {
            if (check.Outcome == Outcome.Undecided)
            {
                foreach (var datum in check.Check.Missing)
                {
                    if (!missing.TryGetValue(datum.Place, out var found))
                    {
                        missing.Add(datum.Place, found = (datum, []));
                    }

                    found.Checks.Add(check);
                }
            }

            foreach (var assumption in check.Check.Assumptions)
            {
                if (!assumptions.TryGetValue(assumption, out var checks))
                {
                    assumptions.Add(assumption, checks = []);
                }

                checks.Add(check);
            }
        }

        Missing =
        [
            .. missing.Values.Select(one => new MissingData(
                one.Datum.Place.Datum ?? "value",
                one.Datum.Of,
                one.Datum.Place.Datum is { } name && Network.IsUnknown(one.Datum.Place.Owner, name),
                [.. one.Checks.Select(check => check.Check.Rule).Distinct().Order(StringComparer.Ordinal)],
                one.Checks.Count,
                [.. one.Checks.Select(check => check.Rail).Where(rail => rail.Length > 0).Distinct()],
                Written(one.Datum.Place) ?? Written(one.Datum.Place with { Datum = null, Index = null })))
                .OrderByDescending(one => one.Checks),
        ];
        Assumptions =
        [
            .. assumptions.Select(pair => new Assumption(
                pair.Key,
                [.. pair.Value.Select(check => check.Check.Rule).Distinct().Order(StringComparer.Ordinal)],
                [.. pair.Value.Select(check => check.Rail).Where(rail => rail.Length > 0).Distinct()])),
        ];
    }

    private void ReadPolicies()
    {
        var found = new List<(DesignPolicy Policy, List<string> Places)>();
        foreach (var rail in Network.Rails)
        {
            Note(Network.PolicyAt(rail).Policy, $"rail '{Network.Label(rail)}'");
            foreach (var place in Network.Parts(rail))
            {
                if (place.Part.Policy is { } own)
                {
                    Note(own, $"'{place.Label}' on rail '{Network.Label(rail)}'");
                }
            }
        }

        Policies = [.. found.Select(one => new PolicyInForce(one.Policy.Name, one.Policy.Citation, [.. one.Places], MarginsOf(one.Policy), Written(new DatumPlace(one.Policy))))];

        void Note(DesignPolicy policy, string place)
        {
            var index = found.FindIndex(one => ReferenceEquals(one.Policy, policy));
            if (index < 0)
            {
                found.Add((policy, [place]));
            }
            else
            {
                found[index].Places.Add(place);
            }
        }
    }

    private ImmutableArray<PolicyMargin> MarginsOf(DesignPolicy policy) =>
    [
        .. typeof(DesignPolicy).GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.Name is not (nameof(DesignPolicy.Name) or nameof(DesignPolicy.Citation)) && property.GetMethod is not null && property.GetIndexParameters().Length == 0)
            .OrderBy(property => property.Name, StringComparer.Ordinal)
            .Select(property => new PolicyMargin(
                Words(property.Name),
                Worded(property.GetValue(policy)),
                Worded(property.GetValue(DesignPolicy.Default)),
                Written(new DatumPlace(policy, property.Name)))),
    ];

    /// <summary>"fuse continuous" for FuseContinuous, "DC voltage rating" for DcVoltageRating; text that is no name stays as it is.</summary>
    internal static string Words(string name)
    {
        if (!name.All(char.IsLetterOrDigit))
        {
            return name;
        }

        var words = string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : i == 0 ? char.ToLowerInvariant(c).ToString() : c.ToString()));
        return words.StartsWith("dc ", StringComparison.Ordinal) || words.StartsWith("ac ", StringComparison.Ordinal) ? words[..2].ToUpperInvariant() + words[2..] : words;
    }

    /// <summary>A value of the model for people.</summary>
    internal static string Worded(object? value) => value switch
    {
        null => "not set",
        bool yes => yes ? "yes" : "no",
        double number => Figures.Digits(number),
        int number => number.ToString(CultureInfo.InvariantCulture),
        string text => Shown.Text(text),
        Length length => Figures.Text(length.Meters, "m"),
        TemperatureDelta delta => Figures.Text(delta.Kelvins, "K"),
        Temperature temperature => Figures.Text(temperature.DegreesCelsius, "°C"),
        ElectricCurrent current => Figures.Text(current.Amperes, "A"),
        ElectricPotential voltage => Figures.Text(voltage.Volts, "V"),
        Duration time => Figures.Text(time.Seconds, "s"),
        Power power => Figures.Text((double)power.Watts, "W"),
        Ratio ratio => Figures.Digits(ratio.DecimalFractions),
        PulseLifePoint point => $"{Figures.Digits(point.Share)} at {Figures.Digits(point.Starts)} starts",
        Enum name => Words(name.ToString()),
        System.Collections.IEnumerable items => string.Join(", ", items.Cast<object?>().Select(Worded)) is { Length: > 0 } joined ? joined : "none",
        _ => Shown.Text(value.ToString()),
    };

    private void ReadAlternates()
    {
        var result = ImmutableArray.CreateBuilder<AlternatePart>();
        var seen = new HashSet<(string, string)>();
        foreach (var rail in Network.Rails)
        {
            foreach (var place in Network.Parts(rail))
            {
                foreach (var alternate in Network.Items(place.Part.Alternates))
                {
                    if (alternate is not null)
                    {
                        var name = alternate.PartNumber ?? alternate.Name ?? Network.Kind(alternate);
                        if (seen.Add((place.Label, name)))
                        {
                            var said = Checks.Where(check => check.Check.Rule == "RAIL0701" && check.Check.Message.Contains("'" + name + "'", StringComparison.Ordinal)).ToList();
                            result.Add(new AlternatePart(place.Label, name, alternate.Citation, said.Count == 0 ? "not judged" : string.Join("; ", said.Select(check => check.Check.Message).Distinct().Take(3))));
                        }
                    }
                }
            }
        }

        Alternates = result.ToImmutable();
    }
}

/// <summary>A datum that checks wait for.</summary>
/// <param name="Datum">Its name.</param>
/// <param name="Of">Whose it is.</param>
/// <param name="IsWritten">Whether it is written but could not be worked out.</param>
/// <param name="Rules">Which rules wait.</param>
/// <param name="Checks">How many checks wait.</param>
/// <param name="Rails">On which rails.</param>
/// <param name="At">Where it is, or would be, written.</param>
public sealed record MissingData(string Datum, string Of, bool IsWritten, ImmutableArray<string> Rules, int Checks, ImmutableArray<string> Rails, SourcePlace? At);

/// <summary>What was assumed where data are silent.</summary>
/// <param name="Text">A sentence.</param>
/// <param name="Rules">In which rules.</param>
/// <param name="Rails">On which rails.</param>
public sealed record Assumption(string Text, ImmutableArray<string> Rules, ImmutableArray<string> Rails);

/// <summary>A policy that some place of the board uses.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Citation">Where its margins come from.</param>
/// <param name="Places">Where it holds.</param>
/// <param name="Margins">Its margins.</param>
/// <param name="At">Where it is written.</param>
public sealed record PolicyInForce(string Name, string? Citation, ImmutableArray<string> Places, ImmutableArray<PolicyMargin> Margins, SourcePlace? At);

/// <summary>A margin of a policy.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">Its value here.</param>
/// <param name="Default">The library's default.</param>
/// <param name="At">Where it is written.</param>
public sealed record PolicyMargin(string Name, string Value, string Default, SourcePlace? At);

/// <summary>A part that may be fitted instead.</summary>
/// <param name="Of">The first choice.</param>
/// <param name="Name">The alternate.</param>
/// <param name="Citation">Where its data come from.</param>
/// <param name="Said">What the checks say.</param>
public sealed record AlternatePart(string Of, string Name, string? Citation, string Said);
