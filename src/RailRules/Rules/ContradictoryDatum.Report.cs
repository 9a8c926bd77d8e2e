using System.Collections.Immutable;

namespace RailRules.Rules;

public sealed partial class ContradictoryDatum
{
    /// <summary>What is said about one object, and what it holds that is to be looked at next.</summary>
    private sealed class Report(Item item, Walk walk)
    {
        private readonly List<Item> held = [];

        public void PushHeld(Stack<Item> work)
        {
            for (var index = held.Count - 1; index >= 0; index--)
            {
                work.Push(held[index]);
            }
        }

        /// <summary>An object that is part of this one's data.</summary>
        public void Holds(object? value, string datum, int? index = null)
        {
            if (value is not null)
            {
                held.Add(new Item(value, item.Root, item.Label, item.Prefix + Step(datum, index) + ".", item, datum, index, item.Rail));
            }
        }

        public void Holds<T>(ImmutableArray<T> values, string datum)
            where T : class
        {
            for (var index = 0; !values.IsDefault && index < values.Length; index++)
            {
                Holds(values[index], datum, index);
            }
        }

        /// <summary>A part, load or clamp, which has a name of its own or is named by its place.</summary>
        public void Places(object? part, string datum, int? index = null)
        {
            if (part is null)
            {
                return;
            }

            var label = LabelOf(part, item.Rail);
            held.Add(label is null
                ? new Item(part, part, item.Label, item.Prefix + Step(datum, index) + ".", item, datum, index, item.Rail)
                : new Item(part, part, label, "", item, datum, index, item.Rail));
        }

        public void Places<T>(ImmutableArray<T> parts, string datum)
            where T : class
        {
            for (var index = 0; !parts.IsDefault && index < parts.Length; index++)
            {
                Places(parts[index], datum, index);
            }
        }

        /// <summary>The elements of a branch.</summary>
        public void Places(ImmutableArray<Element> parts, string branch, string datum, int index)
        {
            for (var place = 0; !parts.IsDefault && place < parts.Length; place++)
            {
                if (parts[place] is { } part)
                {
                    var label = LabelOf(part, item.Rail);
                    held.Add(new Item(part, part, label ?? item.Label, label is null ? $"{item.Prefix}{branch}[{place}]." : "", item, datum, index, item.Rail));
                }
            }
        }

        /// <summary>A source above; a part by itself is looked at without it.</summary>
        public void Feeds(Source? source)
        {
            if (source is not null && walk.FollowSources)
            {
                held.Add(new Item(source, source, source.Name, "", null, null, null, source as Rail ?? item.Rail));
            }
        }

        /// <summary>A datum outside its range, or with its ends out of order.</summary>
        public void Datum(string datum, Numbers numbers, string unit, Bounds bounds)
        {
            foreach (var (which, value) in numbers.Each)
            {
                if (!bounds.Contains(value))
                {
                    Found(which.Length == 0 ? datum : datum + " " + which, Figures.Text(value, unit), "its range, " + bounds.Text(unit), item.Places(datum), isAlone: true);
                    return;
                }
            }

            var (low, high) = numbers switch
            {
                { Typical: { } typical } when IsBelow(typical, numbers.Min) => (("min", numbers.Min), ("typical", typical)),
                { Typical: { } typical } when IsBelow(numbers.Max, typical) => (("typical", typical), ("max", numbers.Max)),
                _ when IsBelow(numbers.Max, numbers.Min) => (("min", numbers.Min), ("max", numbers.Max)),
                _ => (("", 0.0), ("", 0.0)),
            };
            if (low.Item1.Length > 0)
            {
                var (left, right) = Texts(low.Item2, high.Item2, unit);
                Found($"{datum} {low.Item1}", left, $"{high.Item1} {right}", item.Places(datum), isAlone: true);
            }
        }

        /// <summary>A datum whose value cannot even be read in its unit.</summary>
        public void Unreadable(string datum, string unit, Bounds bounds) =>
            Found(datum, "unlimited", "its range, " + bounds.Text(unit), item.Places(datum), isAlone: true);

        public Named? Of(string datum, double? value) =>
            value is { } number && IsFinite(number) ? new Named(datum, number, new DatumPlace(item.Object, datum)) : null;

        public Named? Min<T>(string datum, Band<T>? band, Func<T, double> read)
            where T : struct, IComparable<T> => band is { } value ? Of(datum, read(value.Min)) is { } named ? named with { Text = Ends(datum, value, "min") } : null : null;

        public Named? Max<T>(string datum, Band<T>? band, Func<T, double> read)
            where T : struct, IComparable<T> => band is { } value ? Of(datum, read(value.Max)) is { } named ? named with { Text = Ends(datum, value, "max") } : null : null;

        /// <summary>A value of an object in a collection or property of this one.</summary>
        public static Named? In(object? owner, string inner, string datum, int? index, double? value) =>
            owner is not null && value is { } number && IsFinite(number) ? new Named(Step(datum, index) + "." + inner, number, new DatumPlace(owner, inner)) : null;

        /// <summary>The first may not be below the second.</summary>
        public void AtLeast(Named? first, Named? second, string unit)
        {
            if (first is { } a && second is { } b && IsBelow(a.Value, b.Value))
            {
                Contradict(a, b, unit);
            }
        }

        /// <summary>The first may not exceed the second.</summary>
        public void AtMost(Named? first, Named? second, string unit)
        {
            if (first is { } a && second is { } b && IsBelow(b.Value, a.Value))
            {
                Contradict(a, b, unit);
            }
        }

        /// <summary>The first lies below the second.</summary>
        public void Below(Named? first, Named? second, string unit)
        {
            if (first is { } a && second is { } b && !IsBelow(a.Value, b.Value))
            {
                Contradict(a, b, unit);
            }
        }

        public void Contradict(Named first, Named second, string unit)
        {
            var (left, right) = Texts(first.Value, second.Value, unit);
            Found(first.Text, left, $"{item.Prefix}{second.Text} {right}", PlacesOf(first, second));
        }

        /// <summary>Two statements that exclude each other.</summary>
        public void Exclude(string datum, string value, string other, string otherValue) =>
            Found(datum, value, $"{item.Prefix}{other} {otherValue}", [.. item.Places(datum), new DatumPlace(item.Object, other)]);

        /// <summary>A curve whose value may not rise; points are taken in the order of their abscissa.</summary>
        public void NeverRises<T>(string datum, ImmutableArray<T> points, (string Name, string Unit, Func<T, double> Read) across, (string Name, string Unit, Func<T, double?> Read) along)
            where T : class
        {
            if (points.IsDefaultOrEmpty || points.Length < 2)
            {
                return;
            }

            (double X, double Y, int Index)? last = null;
            foreach (var (x, y, index) in points
                .Select((point, index) => (X: point is null ? double.NaN : across.Read(point), Y: point is null ? null : along.Read(point), Index: index))
                .Where(point => IsFinite(point.X) && point.Y is { } value && IsFinite(value))
                .Select(point => (point.X, Y: point.Y!.Value, point.Index))
                .OrderBy(point => point.X))
            {
                if (last is { } before && IsBelow(before.Y, y))
                {
                    var (left, right) = Texts(y, before.Y, along.Unit);
                    var (here, there) = Texts(x, before.X, across.Unit);
                    Found(
                        $"{Step(datum, index)}.{along.Name}",
                        $"{left} at {here}",
                        $"{item.Prefix}{Step(datum, before.Index)}.{along.Name} {right} at {there}",
                        PlacesOf(new Named("", y, new DatumPlace(points[index], along.Name)), new Named("", before.Y, new DatumPlace(points[before.Index], along.Name)), datum, index));
                    return;
                }

                last = (x, y, index);
            }
        }

        /// <summary>A derating curve: it may not rise with temperature, and is 1 at the temperature at which the rating holds.</summary>
        public void Derating(string datum, ImmutableArray<DeratingPoint> points, double? reference = null)
        {
            NeverRises(datum, points, (nameof(DeratingPoint.Ambient), "°C", point => point.Ambient.DegreesCelsius), (nameof(DeratingPoint.Factor), "", point => point.Factor));
            if (reference is not { } ambient || points.IsDefaultOrEmpty || points.Any(point => point is null || !Bounds.Factor.Contains(point.Factor)))
            {
                return;
            }

            var curve = points.Select((point, index) => (X: point.Ambient.DegreesCelsius, Y: point.Factor, Index: index)).OrderBy(point => point.X).ToList();
            var above = curve.FindIndex(point => !IsBelow(point.X, ambient));

            // Outside the curve only one side is known: the factor is at least that of the first point, at most that of the last.
            var (factor, nearest, wrong) = above switch
            {
                < 0 => (curve[curve.Count - 1].Y, curve[curve.Count - 1].Index, curve[curve.Count - 1].Y < 0.98 - 1e-9),
                0 when IsBelow(ambient, curve[0].X) => (curve[0].Y, curve[0].Index, curve[0].Y > 1.02 + 1e-9),
                0 => Outside(curve[0].Y, curve[0].Index),
                _ => Outside(Between(curve[above - 1], curve[above], ambient), curve[above].Index),
            };
            if (wrong)
            {
                Found(
                    datum,
                    $"{Figures.Digits(factor)} at {Figures.Text(ambient, "°C")}",
                    item.Prefix + "ReferenceAmbient " + Figures.Text(ambient, "°C") + ", where the rating holds: 1 ± 0.02 is expected there",
                    [.. item.Places(datum, nearest), new DatumPlace(item.Object, nameof(Fuse.ReferenceAmbient))]);
            }
        }

        private static (double Factor, int Index, bool Wrong) Outside(double factor, int index) => (factor, index, Math.Abs(factor - 1) > 0.02 + 1e-9);

        private static double Between((double X, double Y, int Index) left, (double X, double Y, int Index) right, double x) =>
            right.X - left.X < 1e-9 ? right.Y : left.Y + ((right.Y - left.Y) * (x - left.X) / (right.X - left.X));

        private static string Ends<T>(string datum, Band<T> band, string end)
            where T : struct, IComparable<T> => band.Min.CompareTo(band.Max) == 0 ? datum : datum + " " + end;

        private static string Step(string datum, int? index) => index is { } number ? $"{datum}[{number}]" : datum;

        private IEnumerable<DatumPlace> PlacesOf(Named first, Named second, string? datum = null, int? index = null)
        {
            yield return first.Place;
            if (datum is not null)
            {
                yield return new DatumPlace(item.Object, datum, index);
            }

            foreach (var place in item.Places("").Skip(1))
            {
                yield return place;
            }

            yield return second.Place;
        }

        private void Found(string datum, string value, string other, IEnumerable<DatumPlace> places, bool isAlone = false) => walk.Found(item, isAlone, datum, value, other, places);
    }

    /// <summary>A datum as numbers in the unit in which it is judged.</summary>
    private readonly record struct Numbers(double Min, double? Typical, double Max, bool IsBand)
    {
        public IEnumerable<(string Which, double Value)> Each
        {
            get
            {
                yield return (IsBand ? "min" : "", Min);
                if (IsBand)
                {
                    if (Typical is { } typical)
                    {
                        yield return ("typical", typical);
                    }

                    yield return ("max", Max);
                }
            }
        }

        public bool IsWithin(Bounds bounds) =>
            bounds.Contains(Min) && (!IsBand || (bounds.Contains(Max) && (Typical is not { } typical || (bounds.Contains(typical) && !IsBelow(typical, Min) && !IsBelow(Max, typical))) && !IsBelow(Max, Min)));
    }

    /// <summary>What a datum can be.</summary>
    private sealed record Bounds(double Low, double High, bool AboveLow = false)
    {
        public static readonly Bounds ZeroUp = new(0, double.MaxValue);

        public static readonly Bounds AboveZero = new(0, double.MaxValue, AboveLow: true);

        public static readonly Bounds OneUp = new(1, double.MaxValue);

        public static readonly Bounds Share = new(0, 1);

        public static readonly Bounds ShareAboveZero = new(0, 1, AboveLow: true);

        /// <summary>A factor on a rating: above 1 in the cold, never twice as much; so a percentage is found.</summary>
        public static readonly Bounds Factor = new(0, 2);

        /// <summary>From absolute zero up, in °C.</summary>
        public static readonly Bounds Celsius = new(-273.15, double.MaxValue);

        /// <summary>From the lowest dry land to where no air is left, in m.</summary>
        public static readonly Bounds Altitude = new(-500, 100_000);

        public bool Contains(double value) => IsFinite(value) && value <= High && (AboveLow ? value > Low : value >= Low);

        public string Text(string unit) => (AboveLow, High) switch
        {
            (false, double.MaxValue) => $"{Figures.Text(Low, unit)} and up",
            (true, double.MaxValue) => $"above {Figures.Text(Low, unit)}",
            (true, _) => $"above {Figures.Text(Low, unit)} to {Figures.Text(High, unit)}",
            _ => $"{Figures.Text(Low, unit)} to {Figures.Text(High, unit)}",
        };
    }
}
