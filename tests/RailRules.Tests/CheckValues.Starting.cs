using RailRules.Physics;

namespace RailRules.Tests;

public partial class CheckValues
{
    private static readonly (double Pulses, double Share)[] PulseShares = [(1e2, 0.48), (1e3, 0.38), (1e4, 0.29), (1e5, 0.22)];

    /// <summary>How each row on pulses, starts, clamps, resettable fuses, temperature and dissipation is computed by the library.</summary>
    private static readonly Dictionary<string, Func<Row, double>> Starting = new(StringComparer.Ordinal)
    {
        ["PI-01"] = row => PulseIntegrals.Of(PulseShape.Rectangle, row["Ip_A"], row["t_s"]),
        ["PI-02"] = row => PulseIntegrals.Of(PulseShape.Triangle, row["Ip_A"], row["t_s"]),
        ["PI-03"] = row => PulseIntegrals.Of(PulseShape.HalfSine, row["Ip_A"], row["t_s"]),
        ["PI-04"] = row => PulseIntegrals.Trapezoid(row["Ip_A"], row["Ib_A"], row["t_s"]),
        ["PI-05"] = row => PulseIntegrals.Of(PulseShape.Exponential, row["Ip_A"], row["tau_s"]),
        ["PI-06"] = row => PulseIntegrals.CutExponential(row["Ip_A"], row["tau_s"], row["T_s"]),
        ["PI-07"] = row => PulseIntegrals.HalfValueExponential(row["Ip_A"], row["td_s"]),
        ["PI-08"] = row => PulseIntegrals.Parabola(row["Ip_A"], row["t_s"]),
        ["PI-09"] = row => Inrush.Integral(row["V"], row["R_ohm"], row["C_F"]),
        ["PI-10"] = row => Inrush.Integral(row["V"], row["R_ohm"], row["C_F"]),
        ["PC-01"] = row => PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-02"] = row => PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-03"] = row => PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-04"] = row => PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-05"] = row => row["I2t_pulse_A2s"] / PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-06"] = row => row["I2t_pulse_A2s"] / PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-07"] = row => PulseEndurance.Share(PulseShares, row["N"])!.Value,
        ["PC-08"] = row => PulseEndurance.UsedLife([(row["n1"], row["N1"]), (row["n2"], row["N2"])]),
        ["HS-01"] = row => StartFormulas.TemperatureFactor(row["Tjmax_C"], row["Tc_C"]),
        ["HS-02"] = row => row["I25_A"] * StartFormulas.TemperatureFactor(row["Tjmax_C"], row["Tc_C"]),
        ["HS-03"] = row => StartFormulas.TemperatureFactor(row["Tjmax_C"], row["Tc_C"]),
        ["HS-04"] = row => SwitchedStart.Of(row["V"], row["C_F"], new(2))!.Until(row["V"])!.Value.Energy,
        ["HS-05"] = row => SwitchedStart.Of(row["V"], row["C_F"], new(row["I_A"]))!.Until(row["V"])!.Value.Time,
        ["HS-06"] = row => SwitchedStart.Of(row["V"], row["C_F"], new(row["I_A"]), [new(row["IL_A"])])!.Until(row["V"])!.Value.Time,
        ["HS-07"] = row => SwitchedStart.Of(row["V"], row["C_F"], new(row["I_A"]), [new(row["IL_A"])])!.Until(row["V"])!.Value.Energy,
        ["HS-08"] = row => StartFormulas.ShortedEnergy(row["Vmax"], row["Ilim_A"], row["t_s"]),
        ["HS-09"] = row => StartFormulas.RampCurrent(row["C_F"], row["dvdt_V_s"]),
        ["HS-10"] = row => StartFormulas.JunctionRise(row["P_W"], row["Zth_K_W"]),
        ["HS-12"] = row => StartFormulas.SensedLimit(row["Vth_mV"] * 1e-3, row["tol"], row["Rs_mohm"] * 1e-3, row["tolR"]).Low,
        ["HS-13"] = row => StartFormulas.SensedLimit(row["Vth_mV"] * 1e-3, row["tol"], row["Rs_mohm"] * 1e-3, row["tolR"]).High,
        ["TV-01"] = row => Clamp.PulsePower(row["P1_W"], row["t1_us"] * 1e-6, row["t2_us"] * 1e-6)!.Value,
        ["TV-02"] = row => Clamp.PulsePower(row["P1_W"], row["t1_us"] * 1e-6, row["t2_us"] * 1e-6)!.Value,
        ["TV-03"] = row => Clamp.PulsePower(row["P1_W"], row["t1_us"] * 1e-6, row["t2_us"] * 1e-6)!.Value,
        ["TV-04"] = row => Clamp.Through(row["Vbr"], row["Vc"], row["Ipp_A"])!.Value.VoltageAt(row["I_A"]),
        ["TV-05"] = row => StartFormulas.TemperatureFactor(row["Tjmax_C"], row["Ta_C"]),
        ["TV-06"] = row => Clamp.PulseEnergy(row["Vc"], row["Ip_A"], row["td_s"]),
        ["TV-07"] = row => Clamp.InductiveEnergy(row["L_H"], row["I_A"], row["Vc"], row["Vs"])!.Value,
        ["AD-05"] = row => DeviceHeat.SquareRootLaw(row["Tlim_C"], row["Ta_C"], row["Tref_C"]),
        ["AD-06"] = row => DeviceHeat.LinearLaw(0.005, row["Ta_C"], 40),
        ["AD-07"] = row => DeviceHeat.SquareRootLaw(row["Tc_C"], row["Ta_C"], row["Tref_C"]),
        ["AD-08"] = row => DeviceHeat.SquareRootLaw(row["Tc_C"], row["Ta_C"], row["Tref_C"]),
        ["PP-01"] = row => DeviceHeat.LinearLaw(row["slope"], row["T_C"], 23),
        ["PP-02"] = row => DeviceHeat.LinearLaw(row["slope"], row["T_C"], 23),
        ["PP-03"] = row => DeviceHeat.LinearLaw(row["slope"], row["T_C"], 23),
        ["PP-04"] = row => row["I_A"] / DeviceHeat.LinearLaw(row["slope"], row["T_C"], 23),
        ["PP-05"] = row => DeviceHeat.TrippedCurrent(row["Pd_W"], row["V"]),
        ["FD-01"] = row => DeviceHeat.Dissipation(row["dV_mV"] * 1e-3, row["I_A"], row["I_A"]),
        ["FD-02"] = row => 1e3 * DeviceHeat.ResistanceOfDrop(row["dV_mV"] * 1e-3, row["I_A"]),
        ["FD-03"] = row => row["Rcold_mohm"] * Conductors.TemperatureFactor(Conductors.CopperCoefficient, 20 + row["dT_K"]),
        ["FD-04"] = row => DeviceHeat.Dissipation(1, 1, row["x"]),
    };

    public static TheoryData<string> StartingRows() => [.. Starting.Keys];

    [Theory]
    [MemberData(nameof(StartingRows))]
    public void StartingRow(string id) => Check(id, Starting[id](Rows[id]));

    /// <summary>TV-08 and TV-09 name waves and compute nothing.</summary>
    [Fact]
    public void NoRowOfTheseTopicsIsLeftOut()
    {
        string[] topics = ["PI", "PC", "HS", "TV", "PP", "FD"];
        Assert.Empty(Rows.Keys.Where(id => topics.Contains(id.Split('-')[0])).Except(Starting.Keys).Except(Faults.Keys).Except(["TV-08", "TV-09"]));
    }
}
