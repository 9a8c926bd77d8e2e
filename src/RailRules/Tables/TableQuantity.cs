using UnitsNet;

namespace RailRules.Tables;

/// <summary>A unit as a table's header may name it.</summary>
/// <param name="Symbol">Its symbol, e.g. mΩ.</param>
/// <param name="Make">From a number in this unit to the value.</param>
internal sealed record TableUnit(string Symbol, Func<double, object> Make)
{
    /// <summary>Stands where a value has no unit.</summary>
    public static readonly TableUnit None = new("", value => value);

    /// <summary>Units of plain numbers: none, and per cent.</summary>
    public static readonly TableUnit[] OfNumbers = [new("1", value => value), new("%", value => value / 100)];

    /// <summary>The symbol in its usual spelling: mOhm is mΩ, uH is µH, A2s is A²s, degC is °C.</summary>
    public static string Spell(string written)
    {
        var symbol = written.Trim().Replace('\u03BC', 'µ').Replace('\u2126', 'Ω').Replace('º', '°')
            .Replace("Ohms", "Ω").Replace("ohms", "Ω").Replace("Ohm", "Ω").Replace("ohm", "Ω").Replace("deg", "°")
            .Replace("·", "").Replace("*", "").Replace("^2", "²").Replace("A2", "A²").Replace("m2", "m²");
        return symbol.Length > 1 && symbol[0] == 'u' ? "µ" + symbol.Substring(1) : symbol;
    }
}

/// <summary>A kind of quantity with the units in which a table may state it.</summary>
internal abstract class TableQuantity(Type type, string kind, TableUnit[] units)
{
    /// <summary>Every kind of quantity that tables know.</summary>
    public static readonly TableQuantity[] All =
    [
        Of<ElectricCurrent>("current", ("A", v => ElectricCurrent.FromAmperes(v)), ("µA", v => ElectricCurrent.FromMicroamperes(v)), ("mA", v => ElectricCurrent.FromMilliamperes(v)), ("kA", v => ElectricCurrent.FromKiloamperes(v))),
        Of<ElectricPotential>("voltage", ("V", v => ElectricPotential.FromVolts(v)), ("µV", v => ElectricPotential.FromMicrovolts(v)), ("mV", v => ElectricPotential.FromMillivolts(v)), ("kV", v => ElectricPotential.FromKilovolts(v))),
        Of<ElectricResistance>("resistance", ("Ω", v => ElectricResistance.FromOhms(v)), ("µΩ", v => ElectricResistance.FromMicroohms(v)), ("mΩ", v => ElectricResistance.FromMilliohms(v)), ("kΩ", v => ElectricResistance.FromKiloohms(v)), ("MΩ", v => ElectricResistance.FromMegaohms(v))),
        Of<ElectricInductance>("inductance", ("H", v => ElectricInductance.FromHenries(v)), ("nH", v => ElectricInductance.FromNanohenries(v)), ("µH", v => ElectricInductance.FromMicrohenries(v)), ("mH", v => ElectricInductance.FromMillihenries(v))),
        Of<ElectricCapacitance>("capacitance", ("F", v => ElectricCapacitance.FromFarads(v)), ("pF", v => ElectricCapacitance.FromPicofarads(v)), ("nF", v => ElectricCapacitance.FromNanofarads(v)), ("µF", v => ElectricCapacitance.FromMicrofarads(v)), ("mF", v => ElectricCapacitance.FromMillifarads(v))),
        Of<JouleIntegral>("I²t", ("A²s", JouleIntegral.FromAmpereSquaredSeconds)),
        Of<Duration>("time", ("s", v => Duration.FromSeconds(v)), ("ns", v => Duration.FromNanoseconds(v)), ("µs", v => Duration.FromMicroseconds(v)), ("ms", v => Duration.FromMilliseconds(v)), ("min", v => Duration.FromMinutes(v)), ("h", v => Duration.FromHours(v))),
        Of<Temperature>("temperature", ("°C", v => Temperature.FromDegreesCelsius(v)), ("K", v => Temperature.FromKelvins(v))),
        Of<TemperatureDelta>("temperature difference", ("K", v => TemperatureDelta.FromKelvins(v)), ("°C", v => TemperatureDelta.FromDegreesCelsius(v))),
        Of<Power>("power", ("W", v => Power.FromWatts(v)), ("mW", v => Power.FromMilliwatts(v)), ("kW", v => Power.FromKilowatts(v))),
        Of<Energy>("energy", ("J", v => Energy.FromJoules(v)), ("µJ", v => Energy.FromMicrojoules(v)), ("mJ", v => Energy.FromMillijoules(v)), ("kJ", v => Energy.FromKilojoules(v))),
        Of<Length>("length", ("m", v => Length.FromMeters(v)), ("µm", v => Length.FromMicrometers(v)), ("mm", v => Length.FromMillimeters(v)), ("cm", v => Length.FromCentimeters(v)), ("km", v => Length.FromKilometers(v))),
        Of<Area>("area", ("m²", v => Area.FromSquareMeters(v)), ("mm²", v => Area.FromSquareMillimeters(v)), ("cm²", v => Area.FromSquareCentimeters(v))),
        Of<Ratio>("ratio", ("1", v => Ratio.FromDecimalFractions(v)), ("%", v => Ratio.FromPercent(v))),
    ];

    private static readonly Dictionary<Type, TableQuantity> ByType = All.ToDictionary(quantity => quantity.Type);

    public Type Type { get; } = type;

    /// <summary>What people call it: current, voltage.</summary>
    public string Kind { get; } = kind;

    /// <summary>Its units, the one that counts where a header names none for a condition first.</summary>
    public TableUnit[] Units { get; } = units;

    public static TableQuantity? Find(Type type) => ByType.TryGetValue(type, out var found) ? found : null;

    /// <summary>A band of this quantity, boxed; its ends are taken as they are, in whatever order.</summary>
    public abstract object Band(object min, object? typical, object max);

    private static Typed<T> Of<T>(string kind, params (string Symbol, Func<double, T> Make)[] units)
        where T : struct, IComparable<T> => new(kind, [.. units.Select(unit => new TableUnit(unit.Symbol, value => unit.Make(value)))]);

    private sealed class Typed<T>(string kind, TableUnit[] units) : TableQuantity(typeof(T), kind, units)
        where T : struct, IComparable<T>
    {
        public override object Band(object min, object? typical, object max) => new Band<T>((T)min, (T?)typical, (T)max);
    }
}
