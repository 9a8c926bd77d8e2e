namespace RailRules.Physics;

/// <summary>What a conductor bears in a short circuit. Temperatures in °C, sections in mm², currents in A, times in s.</summary>
internal static class Withstand
{
    /// <summary>Longest time for which heating counts as adiabatic (s). Source: IEC 60364-4-43, 434.5.2 (from memory).</summary>
    internal const double LongestAdiabatic = 5;

    /// <summary>Square millimetres in a circular mil: π/4 × (25.4 µm)².</summary>
    internal const double SquareMillimetersPerCircularMil = 5.067074790974977e-4;

    /// <summary>Constant K (A√s/mm²) = √(Q (β + 20) / ρ₂₀). Source: IEC 60364-5-54, Annex A; IEC 60949.</summary>
    /// <param name="volumetricHeat">Volumetric heat capacity at 20 °C (J/(K mm³)).</param>
    /// <param name="beta">Reciprocal of the temperature coefficient at 0 °C (°C).</param>
    /// <param name="resistivity">Resistivity at 20 °C (Ω mm).</param>
    internal static double MaterialConstant(double volumetricHeat, double beta, double resistivity) => Math.Sqrt(volumetricHeat * (beta + 20) / resistivity);

    /// <summary>Factor k (A√s/mm²) = K √ln((β + T_f)/(β + T_i)). Source: IEC 60364-5-54, Annex A; copper K 226, β 234.5, aluminium K 148, β 228.</summary>
    /// <param name="material">Copper or aluminium.</param>
    /// <param name="initial">Temperature at the beginning.</param>
    /// <param name="final">Temperature at the end; not above the beginning: 0.</param>
    internal static double Factor(ConductorMaterial material, double initial, double final)
    {
        var (constant, beta) = material switch
        {
            ConductorMaterial.Aluminium => (MaterialConstant(2.5e-3, 228, 28.264e-6), 228.0),
            _ => (MaterialConstant(3.45e-3, 234.5, 17.241e-6), 234.5),
        };
        return final <= initial || initial <= -beta ? 0 : constant * Math.Sqrt(Math.Log((beta + final) / (beta + initial)));
    }

    /// <summary>The Joule integral that a conductor bears adiabatically (A²s): k² S². Source: IEC 60364-4-43, 434.5.2 (from memory).</summary>
    internal static double Integral(ConductorMaterial material, double section, double initial, double final)
    {
        var factor = Factor(material, initial, final) * section;
        return factor * factor;
    }

    /// <summary>
    /// Melting current by Onderdonk (A), copper: A √(log₁₀((T_m − T_a)/(234 + T_a) + 1)/(33 t)), A in circular mils. A cross-check: within 1 % of k² S² up to the
    /// melting point; not for more than about 10 s. Source: Stauffacher 1928, by the trade press; the constant 33 from memory.
    /// </summary>
    internal static double OnderdonkCurrent(double circularMils, double melting, double ambient, double time) =>
        circularMils * Math.Sqrt(Math.Log10(((melting - ambient) / (234 + ambient)) + 1) / (33 * time));

    /// <summary>
    /// I √t per circular mil of copper: √(0.0297 log₁₀((T₂ + 234)/(T₁ + 234))). A cross-check. Source: ICEA P-32-382-2007, copper.
    /// </summary>
    internal static double IceaCopper(double initial, double final) => Math.Sqrt(0.0297 * Math.Log10((final + 234) / (initial + 234)));

    /// <summary>
    /// Steady current at which a bare round wire in still air melts (A): a d^1.5. A cross-check, not for insulated wires or traces.
    /// Source: Preece 1884 to 1888; copper 80.0 A/mm^1.5 (10 244 A/inch^1.5).
    /// </summary>
    /// <param name="diameter">Diameter, in mm or inch as the constant says.</param>
    /// <param name="constant">80.0 for copper and mm, 10 244 for copper and 7 585 for aluminium and inch.</param>
    internal static double PreeceCurrent(double diameter, double constant) => constant * Math.Pow(diameter, 1.5);

    /// <summary>Force between two parallel conductors per metre (N/m): 2e−7 I²/d. Source: Ampère's law.</summary>
    internal static double ForcePerMeter(double current, double distance) => 2e-7 * current * current / distance;
}
