namespace RailRules.Rules;

public sealed partial class ContradictoryDatum
{
    /// <summary>Contradictions along a chain of rails: a transient maximum below what the sources give, and a fault loop without any resistance.</summary>
    private sealed class Loops
    {
        private readonly Dictionary<Source, (double Volts, Source Of)?> highest = [];
        private readonly Dictionary<Source, bool> withoutResistance = [];

        public IEnumerable<Check> Check(IEnumerable<Rail> rails)
        {
            foreach (var source in Upstream.FirstToLast(rails))
            {
                highest[source] = HighestOf(source);
                withoutResistance[source] = IsWithoutResistance(source);
            }

            foreach (var rail in rails)
            {
                if (Volts(rail.TransientMax) is { } transient && highest[rail] is { } steady && IsBelow(transient, steady.Volts))
                {
                    var (left, right) = Texts(transient, steady.Volts, "V");
                    var datum = DatumOf(steady.Of);
                    yield return Finding(rail.Name, nameof(Rail.TransientMax), left, $"{datum} {right} of '{steady.Of.Name}'", rail, [new(rail, nameof(Rail.TransientMax)), new(steady.Of, datum)]);
                }

                if (withoutResistance[rail] && !Sources(rail).OfType<Rail>().Any(above => withoutResistance[above]))
                {
                    var source = Sources(rail).First(above => withoutResistance.TryGetValue(above, out var without) && without);
                    var datum = source is Battery ? nameof(Battery.InternalResistance) : nameof(Supply.SourceResistance);
                    yield return Finding(
                        source.Name,
                        datum,
                        Figures.Text(0, "Ω"),
                        $"the fault loop of '{rail.Name}', {Figures.Text(0, "Ω")} in all: nothing would limit its fault current",
                        rail,
                        [new(source, datum), new(rail, nameof(Rail.Path)), new(rail, nameof(Rail.Return))]);
                }
            }
        }

        private static IEnumerable<Source> Sources(Rail rail) => Upstream.Of(rail);

        private static string DatumOf(Source source) => source switch
        {
            Battery battery => battery.ChargeVoltage is null ? nameof(Battery.OpenCircuitVoltage) : nameof(Battery.ChargeVoltage),
            Converter => nameof(Converter.Output),
            _ => nameof(Supply.Voltage),
        };

        private static double? Volts(UnitsNet.ElectricPotential? value)
        {
            try
            {
                return value?.Volts is { } volts && IsFinite(volts) ? volts : null;
            }
            catch (ArgumentException)
            {
                return null;
            }
        }

        /// <summary>The highest steady voltage of a source, with the source whose datum it is; null: unknown.</summary>
        private (double Volts, Source Of)? HighestOf(Source source) => source switch
        {
            Rail rail => Sources(rail)
                .Select(above => highest.TryGetValue(above, out var value) ? value : null)
                .Where(value => value is not null)
                .OrderByDescending(value => value!.Value.Volts)
                .FirstOrDefault(),
            Supply supply => Volts(supply.Voltage?.Max) is { } volts ? (volts, supply) : null,
            Battery battery => (Volts(battery.ChargeVoltage?.Max) ?? Volts(battery.OpenCircuitVoltage?.Max)) is { } volts ? (volts, battery) : null,
            Converter converter => Volts(converter.Output?.Max) is { } volts ? (volts, converter) : null,
            _ => null,
        };

        /// <summary>Whether source, path and return are all stated to have no resistance whatever, and nothing else limits the current.</summary>
        private bool IsWithoutResistance(Source source) => source switch
        {
            Supply supply => IsZero(supply.SourceResistance) && supply is { CurrentLimit: null, ProspectiveFault: null },
            Battery battery => IsZero(battery.InternalResistance),
            Rail rail => HasNone(rail.Path) && ReturnHasNone(rail.Return) && (
                (rail.From is { } from && withoutResistance.TryGetValue(from, out var above) && above)
                || (!rail.Feeds.IsDefault && rail.Feeds.Any(feed => feed?.From is { } fed && HasNone(feed.Path) && ReturnHasNone(feed.Return) && withoutResistance.TryGetValue(fed, out var without) && without))),
            _ => false,
        };

        private static bool ReturnHasNone(Return? back) =>
            back is not null && (back.IsMirrored || (back.Resistance is null ? HasNone(back.Elements) : IsZero(back.Resistance)));

        private static bool HasNone(System.Collections.Immutable.ImmutableArray<Element> path)
        {
            // A group has none as soon as one branch has none; a group within a branch counts as having some.
            return !path.IsDefault && path.All(element => element switch
            {
                ParallelGroup group => !group.Branches.IsDefault && group.Branches.Any(branch => !branch.IsDefault && branch.All(inner => inner is not ParallelGroup && IsNone(inner))),
                _ => IsNone(element),
            });
        }

        private static bool IsNone(Element? element) => element switch
        {
            Wire wire => IsZero(wire.Resistance) || (wire.Resistance is null && wire.Length is { } length && length.Value.Equals(0)),
            Busbar busbar => IsZero(busbar.Resistance) || (busbar.Resistance is null && busbar.Length is { } length && length.Value.Equals(0)),
            Trace trace => IsZero(trace.Resistance) || (trace.Resistance is null && trace.Length is { } length && length.Value.Equals(0)),
            Connector connector => IsZero(connector.ContactResistance),
            FuseHolder holder => IsZero(holder.ContactResistance),
            Fuse fuse => IsZero(fuse.ColdResistance),
            CircuitBreaker breaker => IsZero(breaker.Resistance),
            ResettableFuse resettable => IsZero(resettable.Resistance),
            ElectronicFuse electronic => IsZero(electronic.OnResistance),
            Switch closed => IsZero(closed.OnResistance),
            Inductor inductor => IsZero(inductor.Resistance),
            InrushLimiter limiter => IsZero(limiter.HotResistance),
            _ => false,
        };

        private static bool IsZero(Band<UnitsNet.ElectricResistance>? band) => band is { } value && value.Max.Value.Equals(0);
    }
}
