using UnitsNet;

namespace RailRules;

/// <summary>Number helpers for electrical quantities: <c>54.Volts()</c>. A minus sign needs brackets: <c>(-5).Celsius()</c>.</summary>
public static partial class Quantities
{
    /// <summary>A voltage of <paramref name="value"/> millivolts.</summary>
    public static ElectricPotential Millivolts(this int value) => ElectricPotential.FromMillivolts(value);
    /// <summary>A voltage of <paramref name="value"/> millivolts.</summary>
    public static ElectricPotential Millivolts(this long value) => ElectricPotential.FromMillivolts(value);
    /// <summary>A voltage of <paramref name="value"/> millivolts.</summary>
    public static ElectricPotential Millivolts(this double value) => ElectricPotential.FromMillivolts(value);
    /// <summary>A voltage of <paramref name="value"/> millivolts.</summary>
    public static ElectricPotential Millivolts(this decimal value) => ElectricPotential.FromMillivolts(value);

    /// <summary>A voltage of <paramref name="value"/> volts.</summary>
    public static ElectricPotential Volts(this int value) => ElectricPotential.FromVolts(value);
    /// <summary>A voltage of <paramref name="value"/> volts.</summary>
    public static ElectricPotential Volts(this long value) => ElectricPotential.FromVolts(value);
    /// <summary>A voltage of <paramref name="value"/> volts.</summary>
    public static ElectricPotential Volts(this double value) => ElectricPotential.FromVolts(value);
    /// <summary>A voltage of <paramref name="value"/> volts.</summary>
    public static ElectricPotential Volts(this decimal value) => ElectricPotential.FromVolts(value);

    /// <summary>A voltage of <paramref name="value"/> kilovolts.</summary>
    public static ElectricPotential Kilovolts(this int value) => ElectricPotential.FromKilovolts(value);
    /// <summary>A voltage of <paramref name="value"/> kilovolts.</summary>
    public static ElectricPotential Kilovolts(this long value) => ElectricPotential.FromKilovolts(value);
    /// <summary>A voltage of <paramref name="value"/> kilovolts.</summary>
    public static ElectricPotential Kilovolts(this double value) => ElectricPotential.FromKilovolts(value);
    /// <summary>A voltage of <paramref name="value"/> kilovolts.</summary>
    public static ElectricPotential Kilovolts(this decimal value) => ElectricPotential.FromKilovolts(value);

    /// <summary>A current of <paramref name="value"/> microamperes.</summary>
    public static ElectricCurrent Microamperes(this int value) => ElectricCurrent.FromMicroamperes(value);
    /// <summary>A current of <paramref name="value"/> microamperes.</summary>
    public static ElectricCurrent Microamperes(this long value) => ElectricCurrent.FromMicroamperes(value);
    /// <summary>A current of <paramref name="value"/> microamperes.</summary>
    public static ElectricCurrent Microamperes(this double value) => ElectricCurrent.FromMicroamperes(value);
    /// <summary>A current of <paramref name="value"/> microamperes.</summary>
    public static ElectricCurrent Microamperes(this decimal value) => ElectricCurrent.FromMicroamperes(value);

    /// <summary>A current of <paramref name="value"/> milliamperes.</summary>
    public static ElectricCurrent Milliamperes(this int value) => ElectricCurrent.FromMilliamperes(value);
    /// <summary>A current of <paramref name="value"/> milliamperes.</summary>
    public static ElectricCurrent Milliamperes(this long value) => ElectricCurrent.FromMilliamperes(value);
    /// <summary>A current of <paramref name="value"/> milliamperes.</summary>
    public static ElectricCurrent Milliamperes(this double value) => ElectricCurrent.FromMilliamperes(value);
    /// <summary>A current of <paramref name="value"/> milliamperes.</summary>
    public static ElectricCurrent Milliamperes(this decimal value) => ElectricCurrent.FromMilliamperes(value);

    /// <summary>A current of <paramref name="value"/> amperes.</summary>
    public static ElectricCurrent Amperes(this int value) => ElectricCurrent.FromAmperes(value);
    /// <summary>A current of <paramref name="value"/> amperes.</summary>
    public static ElectricCurrent Amperes(this long value) => ElectricCurrent.FromAmperes(value);
    /// <summary>A current of <paramref name="value"/> amperes.</summary>
    public static ElectricCurrent Amperes(this double value) => ElectricCurrent.FromAmperes(value);
    /// <summary>A current of <paramref name="value"/> amperes.</summary>
    public static ElectricCurrent Amperes(this decimal value) => ElectricCurrent.FromAmperes(value);

    /// <summary>A current of <paramref name="value"/> kiloamperes.</summary>
    public static ElectricCurrent Kiloamperes(this int value) => ElectricCurrent.FromKiloamperes(value);
    /// <summary>A current of <paramref name="value"/> kiloamperes.</summary>
    public static ElectricCurrent Kiloamperes(this long value) => ElectricCurrent.FromKiloamperes(value);
    /// <summary>A current of <paramref name="value"/> kiloamperes.</summary>
    public static ElectricCurrent Kiloamperes(this double value) => ElectricCurrent.FromKiloamperes(value);
    /// <summary>A current of <paramref name="value"/> kiloamperes.</summary>
    public static ElectricCurrent Kiloamperes(this decimal value) => ElectricCurrent.FromKiloamperes(value);

    /// <summary>A resistance of <paramref name="value"/> microohms.</summary>
    public static ElectricResistance Microohms(this int value) => ElectricResistance.FromMicroohms(value);
    /// <summary>A resistance of <paramref name="value"/> microohms.</summary>
    public static ElectricResistance Microohms(this long value) => ElectricResistance.FromMicroohms(value);
    /// <summary>A resistance of <paramref name="value"/> microohms.</summary>
    public static ElectricResistance Microohms(this double value) => ElectricResistance.FromMicroohms(value);
    /// <summary>A resistance of <paramref name="value"/> microohms.</summary>
    public static ElectricResistance Microohms(this decimal value) => ElectricResistance.FromMicroohms(value);

    /// <summary>A resistance of <paramref name="value"/> milliohms.</summary>
    public static ElectricResistance Milliohms(this int value) => ElectricResistance.FromMilliohms(value);
    /// <summary>A resistance of <paramref name="value"/> milliohms.</summary>
    public static ElectricResistance Milliohms(this long value) => ElectricResistance.FromMilliohms(value);
    /// <summary>A resistance of <paramref name="value"/> milliohms.</summary>
    public static ElectricResistance Milliohms(this double value) => ElectricResistance.FromMilliohms(value);
    /// <summary>A resistance of <paramref name="value"/> milliohms.</summary>
    public static ElectricResistance Milliohms(this decimal value) => ElectricResistance.FromMilliohms(value);

    /// <summary>A resistance of <paramref name="value"/> ohms.</summary>
    public static ElectricResistance Ohms(this int value) => ElectricResistance.FromOhms(value);
    /// <summary>A resistance of <paramref name="value"/> ohms.</summary>
    public static ElectricResistance Ohms(this long value) => ElectricResistance.FromOhms(value);
    /// <summary>A resistance of <paramref name="value"/> ohms.</summary>
    public static ElectricResistance Ohms(this double value) => ElectricResistance.FromOhms(value);
    /// <summary>A resistance of <paramref name="value"/> ohms.</summary>
    public static ElectricResistance Ohms(this decimal value) => ElectricResistance.FromOhms(value);

    /// <summary>A resistance of <paramref name="value"/> kiloohms.</summary>
    public static ElectricResistance Kiloohms(this int value) => ElectricResistance.FromKiloohms(value);
    /// <summary>A resistance of <paramref name="value"/> kiloohms.</summary>
    public static ElectricResistance Kiloohms(this long value) => ElectricResistance.FromKiloohms(value);
    /// <summary>A resistance of <paramref name="value"/> kiloohms.</summary>
    public static ElectricResistance Kiloohms(this double value) => ElectricResistance.FromKiloohms(value);
    /// <summary>A resistance of <paramref name="value"/> kiloohms.</summary>
    public static ElectricResistance Kiloohms(this decimal value) => ElectricResistance.FromKiloohms(value);

    /// <summary>A inductance of <paramref name="value"/> nanohenries.</summary>
    public static ElectricInductance Nanohenries(this int value) => ElectricInductance.FromNanohenries(value);
    /// <summary>A inductance of <paramref name="value"/> nanohenries.</summary>
    public static ElectricInductance Nanohenries(this long value) => ElectricInductance.FromNanohenries(value);
    /// <summary>A inductance of <paramref name="value"/> nanohenries.</summary>
    public static ElectricInductance Nanohenries(this double value) => ElectricInductance.FromNanohenries(value);
    /// <summary>A inductance of <paramref name="value"/> nanohenries.</summary>
    public static ElectricInductance Nanohenries(this decimal value) => ElectricInductance.FromNanohenries(value);

    /// <summary>A inductance of <paramref name="value"/> microhenries.</summary>
    public static ElectricInductance Microhenries(this int value) => ElectricInductance.FromMicrohenries(value);
    /// <summary>A inductance of <paramref name="value"/> microhenries.</summary>
    public static ElectricInductance Microhenries(this long value) => ElectricInductance.FromMicrohenries(value);
    /// <summary>A inductance of <paramref name="value"/> microhenries.</summary>
    public static ElectricInductance Microhenries(this double value) => ElectricInductance.FromMicrohenries(value);
    /// <summary>A inductance of <paramref name="value"/> microhenries.</summary>
    public static ElectricInductance Microhenries(this decimal value) => ElectricInductance.FromMicrohenries(value);

    /// <summary>A inductance of <paramref name="value"/> millihenries.</summary>
    public static ElectricInductance Millihenries(this int value) => ElectricInductance.FromMillihenries(value);
    /// <summary>A inductance of <paramref name="value"/> millihenries.</summary>
    public static ElectricInductance Millihenries(this long value) => ElectricInductance.FromMillihenries(value);
    /// <summary>A inductance of <paramref name="value"/> millihenries.</summary>
    public static ElectricInductance Millihenries(this double value) => ElectricInductance.FromMillihenries(value);
    /// <summary>A inductance of <paramref name="value"/> millihenries.</summary>
    public static ElectricInductance Millihenries(this decimal value) => ElectricInductance.FromMillihenries(value);

    /// <summary>A inductance of <paramref name="value"/> henries.</summary>
    public static ElectricInductance Henries(this int value) => ElectricInductance.FromHenries(value);
    /// <summary>A inductance of <paramref name="value"/> henries.</summary>
    public static ElectricInductance Henries(this long value) => ElectricInductance.FromHenries(value);
    /// <summary>A inductance of <paramref name="value"/> henries.</summary>
    public static ElectricInductance Henries(this double value) => ElectricInductance.FromHenries(value);
    /// <summary>A inductance of <paramref name="value"/> henries.</summary>
    public static ElectricInductance Henries(this decimal value) => ElectricInductance.FromHenries(value);

    /// <summary>A capacitance of <paramref name="value"/> nanofarads.</summary>
    public static ElectricCapacitance Nanofarads(this int value) => ElectricCapacitance.FromNanofarads(value);
    /// <summary>A capacitance of <paramref name="value"/> nanofarads.</summary>
    public static ElectricCapacitance Nanofarads(this long value) => ElectricCapacitance.FromNanofarads(value);
    /// <summary>A capacitance of <paramref name="value"/> nanofarads.</summary>
    public static ElectricCapacitance Nanofarads(this double value) => ElectricCapacitance.FromNanofarads(value);
    /// <summary>A capacitance of <paramref name="value"/> nanofarads.</summary>
    public static ElectricCapacitance Nanofarads(this decimal value) => ElectricCapacitance.FromNanofarads(value);

    /// <summary>A capacitance of <paramref name="value"/> microfarads.</summary>
    public static ElectricCapacitance Microfarads(this int value) => ElectricCapacitance.FromMicrofarads(value);
    /// <summary>A capacitance of <paramref name="value"/> microfarads.</summary>
    public static ElectricCapacitance Microfarads(this long value) => ElectricCapacitance.FromMicrofarads(value);
    /// <summary>A capacitance of <paramref name="value"/> microfarads.</summary>
    public static ElectricCapacitance Microfarads(this double value) => ElectricCapacitance.FromMicrofarads(value);
    /// <summary>A capacitance of <paramref name="value"/> microfarads.</summary>
    public static ElectricCapacitance Microfarads(this decimal value) => ElectricCapacitance.FromMicrofarads(value);

    /// <summary>A capacitance of <paramref name="value"/> millifarads.</summary>
    public static ElectricCapacitance Millifarads(this int value) => ElectricCapacitance.FromMillifarads(value);
    /// <summary>A capacitance of <paramref name="value"/> millifarads.</summary>
    public static ElectricCapacitance Millifarads(this long value) => ElectricCapacitance.FromMillifarads(value);
    /// <summary>A capacitance of <paramref name="value"/> millifarads.</summary>
    public static ElectricCapacitance Millifarads(this double value) => ElectricCapacitance.FromMillifarads(value);
    /// <summary>A capacitance of <paramref name="value"/> millifarads.</summary>
    public static ElectricCapacitance Millifarads(this decimal value) => ElectricCapacitance.FromMillifarads(value);

    /// <summary>A capacitance of <paramref name="value"/> farads.</summary>
    public static ElectricCapacitance Farads(this int value) => ElectricCapacitance.FromFarads(value);
    /// <summary>A capacitance of <paramref name="value"/> farads.</summary>
    public static ElectricCapacitance Farads(this long value) => ElectricCapacitance.FromFarads(value);
    /// <summary>A capacitance of <paramref name="value"/> farads.</summary>
    public static ElectricCapacitance Farads(this double value) => ElectricCapacitance.FromFarads(value);
    /// <summary>A capacitance of <paramref name="value"/> farads.</summary>
    public static ElectricCapacitance Farads(this decimal value) => ElectricCapacitance.FromFarads(value);

    /// <summary>A power of <paramref name="value"/> milliwatts.</summary>
    public static Power Milliwatts(this int value) => Power.FromMilliwatts(value);
    /// <summary>A power of <paramref name="value"/> milliwatts.</summary>
    public static Power Milliwatts(this long value) => Power.FromMilliwatts(value);
    /// <summary>A power of <paramref name="value"/> milliwatts.</summary>
    public static Power Milliwatts(this double value) => Power.FromMilliwatts(value);
    /// <summary>A power of <paramref name="value"/> milliwatts.</summary>
    public static Power Milliwatts(this decimal value) => Power.FromMilliwatts(value);

    /// <summary>A power of <paramref name="value"/> watts.</summary>
    public static Power Watts(this int value) => Power.FromWatts(value);
    /// <summary>A power of <paramref name="value"/> watts.</summary>
    public static Power Watts(this long value) => Power.FromWatts(value);
    /// <summary>A power of <paramref name="value"/> watts.</summary>
    public static Power Watts(this double value) => Power.FromWatts(value);
    /// <summary>A power of <paramref name="value"/> watts.</summary>
    public static Power Watts(this decimal value) => Power.FromWatts(value);

    /// <summary>A power of <paramref name="value"/> kilowatts.</summary>
    public static Power Kilowatts(this int value) => Power.FromKilowatts(value);
    /// <summary>A power of <paramref name="value"/> kilowatts.</summary>
    public static Power Kilowatts(this long value) => Power.FromKilowatts(value);
    /// <summary>A power of <paramref name="value"/> kilowatts.</summary>
    public static Power Kilowatts(this double value) => Power.FromKilowatts(value);
    /// <summary>A power of <paramref name="value"/> kilowatts.</summary>
    public static Power Kilowatts(this decimal value) => Power.FromKilowatts(value);

    /// <summary>A energy of <paramref name="value"/> millijoules.</summary>
    public static Energy Millijoules(this int value) => Energy.FromMillijoules(value);
    /// <summary>A energy of <paramref name="value"/> millijoules.</summary>
    public static Energy Millijoules(this long value) => Energy.FromMillijoules(value);
    /// <summary>A energy of <paramref name="value"/> millijoules.</summary>
    public static Energy Millijoules(this double value) => Energy.FromMillijoules(value);
    /// <summary>A energy of <paramref name="value"/> millijoules.</summary>
    public static Energy Millijoules(this decimal value) => Energy.FromMillijoules(value);

    /// <summary>A energy of <paramref name="value"/> joules.</summary>
    public static Energy Joules(this int value) => Energy.FromJoules(value);
    /// <summary>A energy of <paramref name="value"/> joules.</summary>
    public static Energy Joules(this long value) => Energy.FromJoules(value);
    /// <summary>A energy of <paramref name="value"/> joules.</summary>
    public static Energy Joules(this double value) => Energy.FromJoules(value);
    /// <summary>A energy of <paramref name="value"/> joules.</summary>
    public static Energy Joules(this decimal value) => Energy.FromJoules(value);

    /// <summary>A energy of <paramref name="value"/> watt hours.</summary>
    public static Energy WattHours(this int value) => Energy.FromWattHours(value);
    /// <summary>A energy of <paramref name="value"/> watt hours.</summary>
    public static Energy WattHours(this long value) => Energy.FromWattHours(value);
    /// <summary>A energy of <paramref name="value"/> watt hours.</summary>
    public static Energy WattHours(this double value) => Energy.FromWattHours(value);
    /// <summary>A energy of <paramref name="value"/> watt hours.</summary>
    public static Energy WattHours(this decimal value) => Energy.FromWattHours(value);

    /// <summary>A energy of <paramref name="value"/> kilowatt hours.</summary>
    public static Energy KilowattHours(this int value) => Energy.FromKilowattHours(value);
    /// <summary>A energy of <paramref name="value"/> kilowatt hours.</summary>
    public static Energy KilowattHours(this long value) => Energy.FromKilowattHours(value);
    /// <summary>A energy of <paramref name="value"/> kilowatt hours.</summary>
    public static Energy KilowattHours(this double value) => Energy.FromKilowattHours(value);
    /// <summary>A energy of <paramref name="value"/> kilowatt hours.</summary>
    public static Energy KilowattHours(this decimal value) => Energy.FromKilowattHours(value);
}
