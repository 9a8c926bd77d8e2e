using RailRules.Physics;

namespace RailRules.Tests;

public partial class CheckValues
{
    private const double CopperMelting = 1083;

    /// <summary>How each row on faults, opening and withstand is computed by the library.</summary>
    private static readonly Dictionary<string, Func<Row, double>> Faults = new(StringComparer.Ordinal)
    {
        ["SC-01"] = row => Waveform.Inductive(row["V"], row["R_ohm"], 0).Settled,
        ["SC-02"] = row => Waveform.Inductive(54, row["R_ohm"], row["L_H"]).RiseTimeConstant()!.Value,
        ["SC-03"] = row => Waveform.Inductive(row["V"], 0.0054, row["L_H"]).Pieces[0].Slope(0) / 1e6,
        ["SC-04"] = row => Waveform.Inductive(row["V"], row["R_ohm"], row["L_H"]).At(row["t_s"]),
        ["SC-05"] = row => Waveform.Inductive(1, 1, row["tau_s"]).FirstReach(0.9)!.Value,
        ["SC-06"] = row => Rising(row).SquareIntegral(row["t_s"]),
        ["SC-07"] = row => Rising(row).TimeToIntegral(row["I2t_melt_A2s"])!.Value,
        ["SC-08"] = row => Rising(row).LetThroughPeak(Rising(row).TimeToIntegral(row["I2t_melt_A2s"])!.Value),
        ["SC-09"] = row => ArcInterruption.ArcingTime(row["Vs"], row["R_ohm"], row["L_H"], row["I0_A"], row["Va"]),
        ["SC-12"] = row => Contributions.BatteryPeak(row["UnB"], row["RB_ohm"], row["RBL_ohm"]),
        ["SC-13"] = row => Contributions.BatteryQuasiSteady(row["UnB"], row["RB_ohm"], row["RBL_ohm"]),
        ["SC-23"] = row => StandardGates.SureOpeningMultiple(Characteristic.Iec60269gG, row["In_A"])!.Value * row["In_A"],
        ["SC-24"] = row => FarEnd(row["Vmin"], row["Rs_ohm"], row["L_m"] * row["r_ohm_km"] / 1000, row["T_C"]).Current.Low,
        ["OP-01"] = row => Opens(row["Imin_A"], new() { RatedCurrent = row["In_A"].Amperes(), Characteristic = Characteristic.Iec60269gG }),
        ["OP-02"] = row => Gates(Characteristic.Iec60269gG, 63).LongestTime(row["Imin_A"]) <= 5 ? 1 : 0,
        ["OP-03"] = row => Opens(row["Ilim_A"], new() { RatedCurrent = row["In_A"].Amperes(), Characteristic = Characteristic.Ul248Part14 }),
        ["IR-01"] = row => Interrupts(row["IR_A"], row["I2t_m_A2s"], new() { Voltage = 54.Volts(), CurrentLimit = new() { Level = 20.Amperes() }, OutputCapacitance = 10.Millifarads(), OutputCapacitorEsr = 10.Milliohms(), OutputCapacitorEsl = 2.Microhenries() }),
        ["IR-02"] = row => Interrupts(row["IR_A"], 1, new() { Voltage = 54.Volts(), ProspectiveFault = new() { Current = row["Imax_A"].Amperes() } }),
        ["IR-03"] = row => Interrupts(row["IR_A"], 1, new() { Voltage = 54.Volts(), ProspectiveFault = new() { Current = row["Imax_A"].Amperes() } }),
        ["VR-04"] = row => Proven(row["tau_circuit_s"], row["tau_tested_s"]),
        ["CD-01"] = row => Damping(Waveform.Capacitive(1, row["R_ohm"], row["L_H"], row["C_F"])),
        ["CD-02"] = row => Discharge(row).PeakCurrent,
        ["CD-03"] = row => Discharge(row).Peak().Time * 1e6,
        ["CD-04"] = row => Discharge(row).PeakCurrent,
        ["CD-05"] = row => Discharge(row).Peak().Time * 1e6,
        ["CD-06"] = row => Waveform.Capacitive(row["V"], row["R_ohm"], 0, 1e-3).PeakCurrent,
        ["CD-07"] = row => Waveform.Capacitive(row["V"], row["R_ohm"], 1e-6, 1e-6 / (row["R_ohm"] * row["R_ohm"] / 4)).PeakCurrent,
        ["CD-08"] = row => Waveform.Capacitive(row["V"], 1e-9, row["L_H"], row["C_F"]).PeakCurrent,
        ["CD-09"] = row => Waveform.Capacitive(row["V"], row["R_ohm"], 2e-6, row["C_F"]).SquareIntegral(double.PositiveInfinity),
        ["CD-10"] = row => Waveform.Capacitive(row["V"], row["R_ohm"], 2e-6, row["C_F"]).Energy(row["Rf_ohm"], double.PositiveInfinity),
        ["GU-01"] = row => double.IsPositiveInfinity(Gates(Characteristic.Ul248Part14, 10).ShortestTime(row["multiple"] * 10)) ? 0 : 1,
        ["GU-02"] = row => Gates(Characteristic.Ul248Part14, 10).LongestTime(row["multiple"] * 10),
        ["GU-03"] = row => Longest(Characteristic.Ul248Part14, row),
        ["GU-04"] = row => Longest(Characteristic.Ul248Part14, row),
        ["GU-05"] = row => StandardGates.SureOpeningMultiple(Characteristic.Ul248Part14, row["In_A"])!.Value * row["In_A"],
        ["GM-02"] = row => Shortest(Characteristic.Iec60127QuickActing, row),
        ["GM-03"] = row => Longest(Characteristic.Iec60127QuickActing, row),
        ["GM-04"] = row => Shortest(Characteristic.Iec60127QuickActing, row),
        ["GM-05"] = row => Longest(Characteristic.Iec60127QuickActing, row),
        ["GM-06"] = row => Longest(Characteristic.Iec60127QuickActing, row),
        ["GM-07"] = row => Gates(Characteristic.Iec60127TimeLag, 2).LongestTime(row["multiple"] * 2),
        ["GM-08"] = row => Shortest(Characteristic.Iec60127TimeLag, row),
        ["GM-09"] = row => Longest(Characteristic.Iec60127TimeLag, row),
        ["GM-10"] = row => Shortest(Characteristic.Iec60127TimeLag, row),
        ["GM-11"] = row => Longest(Characteristic.Iec60127TimeLag, row),
        ["GM-12"] = row => Shortest(Characteristic.Iec60127TimeLag, row),
        ["GM-13"] = row => Longest(Characteristic.Iec60127TimeLag, row),
        ["GB-01"] = row => Gates(Characteristic.Iso8820Blade, 10).ShortestTime(row["multiple"] * 10),
        ["GB-02"] = row => Gates(Characteristic.Iso8820Blade, 10).ShortestTime(row["multiple"] * 10),
        ["GB-03"] = row => Gates(Characteristic.Iso8820Blade, 10).LongestTime(row["multiple"] * 10),
        ["GB-04"] = row => Gates(Characteristic.Iso8820Blade, 10).ShortestTime(row["multiple"] * 10),
        ["GB-05"] = row => Gates(Characteristic.Iso8820Blade, 10).LongestTime(row["multiple"] * 10),
        ["GB-06"] = row => Gates(Characteristic.Iso8820Blade, 10).LongestTime(row["multiple"] * 10),
        ["GB-07"] = row => Gates(Characteristic.Iso8820Blade, 10).LongestTime(row["multiple"] * 10),
        ["GG-01"] = row => GreatestWith(row["In_A"], shortest: StandardGates.ConventionalTime(row["In_A"])),
        ["GG-02"] = row => StandardGates.SureOpeningMultiple(Characteristic.Iec60269gG, row["In_A"])!.Value * row["In_A"],
        ["GG-03"] = row => StandardGates.SureOpeningMultiple(Characteristic.Iec60269gG, row["In_A"])!.Value * row["In_A"],
        ["GG-04"] = row => StandardGates.SureOpeningMultiple(Characteristic.Iec60269gG, row["In_A"])!.Value * row["In_A"],
        ["GG-05"] = row => StandardGates.ConventionalTime(row["In_A"]),
        ["GG-06"] = row => StandardGates.ConventionalTime(row["In_A"]),
        ["GG-07"] = row => StandardGates.ConventionalTime(row["In_A"]),
        ["GG-08"] = row => StandardGates.ConventionalTime(row["In_A"]),
        ["GG-09"] = row => GreatestWith(row["In_A"], shortest: 10),
        ["GG-10"] = row => LeastWith(row["In_A"], longest: 5),
        ["GG-11"] = row => GreatestWith(row["In_A"], shortest: 0.1),
        ["GG-12"] = row => LeastWith(row["In_A"], longest: 0.1),
        ["GG-13"] = row => LeastWith(row["In_A"], longest: 5),
        ["GG-14"] = row => LeastWith(row["In_A"], longest: 0.1),
        ["PI-01"] = row => PulseIntegral.Rectangle(row["Ip_A"], row["t_s"]),
        ["PI-02"] = row => PulseIntegral.Triangle(row["Ip_A"], row["t_s"]),
        ["PI-03"] = row => PulseIntegral.HalfSine(row["Ip_A"], row["t_s"]),
        ["PI-04"] = row => PulseIntegral.Trapezoid(row["Ip_A"], row["Ib_A"], row["t_s"]),
        ["PI-05"] = row => PulseIntegral.Exponential(row["Ip_A"], row["tau_s"]),
        ["PI-06"] = row => PulseIntegral.Exponential(row["Ip_A"], row["tau_s"], row["T_s"]),
        ["PI-07"] = row => PulseIntegral.ExponentialByHalfValue(row["Ip_A"], row["td_s"]),
        ["PI-08"] = row => PulseIntegral.Parabola(row["Ip_A"], row["t_s"]),
        ["PI-09"] = row => PulseIntegral.CapacitorDischarge(row["C_F"], row["V"], row["R_ohm"]),
        ["PI-10"] = row => PulseIntegral.CapacitorDischarge(row["C_F"], row["V"], row["R_ohm"]),
        ["FU-01"] = Onderdonk,
        ["FU-02"] = Onderdonk,
        ["FU-03"] = Onderdonk,
        ["FU-04"] = row => Math.Pow(Withstand.OnderdonkCurrent(1 / Withstand.SquareMillimetersPerCircularMil, row["Tm_C"], row["Ta_C"], 1), 2),
        ["FU-05"] = row => Withstand.Integral(ConductorMaterial.Copper, 1, row["Ta_C"], row["Tm_C"]),
        ["FU-06"] = row => Withstand.PreeceCurrent(row["d_in"], 10244),
        ["FU-07"] = row => Withstand.PreeceCurrent(1 / 25.4, row["a_in"]),
        ["FU-08"] = row => Withstand.PreeceCurrent(row["d_mm"], row["a"]),
        ["FU-09"] = row => Withstand.PreeceCurrent(row["d_in"], 7585),
        ["FU-10"] = row => Withstand.IceaCopper(row["T1_C"], row["T2_C"]),
        ["FU-11"] = row => Withstand.IceaCopper(row["T1_C"], row["T2_C"]),
        ["KW-01"] = row => Withstand.MaterialConstant(row["Qc"], row["beta"], row["rho20"]),
        ["KW-02"] = row => Withstand.MaterialConstant(row["Qc"], row["beta"], row["rho20"]),
        ["KW-03"] = row => Withstand.MaterialConstant(row["Qc"], row["beta"], row["rho20"]),
        ["KW-04"] = row => Withstand.Factor(ConductorMaterial.Copper, row["Ti_C"], row["Tf_C"]),
        ["KW-05"] = row => Withstand.Factor(ConductorMaterial.Copper, row["Ti_C"], row["Tf_C"]),
        ["KW-06"] = row => Withstand.Factor(ConductorMaterial.Copper, row["Ti_C"], row["Tf_C"]),
        ["KW-07"] = _ => Withstand.Factor(ConductorMaterial.Aluminium, 70, 160),
        ["KW-08"] = row => Withstand.Factor(ConductorMaterial.Aluminium, row["Ti_C"], row["Tf_C"]),
        ["KW-09"] = row => Withstand.Factor(ConductorMaterial.Copper, row["Ti_C"], row["Tf_C"]),
        ["KW-10"] = row => Withstand.Factor(ConductorMaterial.Copper, row["Ti_C"], row["Tf_C"]),
        ["KW-11"] = row => Math.Sqrt(Withstand.Integral(ConductorMaterial.Copper, row["S_mm2"], row["Ti_C"], row["Tf_C"]) / row["t_s"]),
        ["KW-16"] = row => Withstand.ForcePerMeter(row["I_A"], row["d_m"]),
        ["PT-11"] = row => Withstand.Integral(ConductorMaterial.Copper, row["S_mm2"], row["Ti_C"], row["Tf_C"]) / (row["I_A"] * row["I_A"]),
        ["HS-11"] = row => Openings.ElectronicPeak(row["Itrip_A"], row["Vmax"], row["L_H"], row["t_us"] * 1e-6, 1e9),
    };

    public static TheoryData<string> FaultRows() => [.. Faults.Keys];

    [Theory]
    [MemberData(nameof(FaultRows))]
    public void Fault(string id) => Check(id, Faults[id](Rows[id]));

    private static Waveform Rising(Row row) => Waveform.Inductive(row["Ip_A"], 1, row["tau_s"]);

    private static Waveform Discharge(Row row) => Waveform.Capacitive(row["V"], row["R_ohm"], row["L_H"], row["C_F"]);

    /// <summary>Damping ratio read from the poles: −Re s/|s|.</summary>
    private static double Damping(Waveform discharge) => -discharge.Pieces[0].Modes[0].Pole.Real / System.Numerics.Complex.Abs(discharge.Pieces[0].Modes[0].Pole);

    private static double Onderdonk(Row row) => Withstand.OnderdonkCurrent(row["A_cmil"], CopperMelting, row["Ta_C"], row["t_s"]);

    private static TimeCurrentCurve Gates(Characteristic family, double rated) => TimeCurrentCurve.Of(StandardGates.Of(family, rated), rated);

    private static double Longest(Characteristic family, Row row) => Gates(family, row["In_A"]).LongestTime(row["multiple"] * row["In_A"]);

    private static double Shortest(Characteristic family, Row row) => Gates(family, row["In_A"]).ShortestTime(row["multiple"] * row["In_A"]);

    private static double GreatestWith(double rated, double shortest) =>
        StandardGates.Of(Characteristic.Iec60269gG, rated).Where(gate => gate.Shortest == shortest).Max(gate => gate.Multiple) * rated;

    private static double LeastWith(double rated, double longest) =>
        StandardGates.Of(Characteristic.Iec60269gG, rated).Where(gate => gate.Longest == longest).Min(gate => gate.Multiple) * rated;

    private static Network.SmallFault FarEnd(double volts, double source, double path, double celsius)
    {
        var rail = new Rail
        {
            From = new Battery { OpenCircuitVoltage = volts.Volts(), InternalResistance = source.Ohms() },
            Path = [new Wire { Resistance = path.Ohms(), TemperatureLimit = celsius.Celsius() }],
            Return = Return.Mirrored,
        };
        return new Network([rail]).SmallestFault(rail, -1, 0);
    }

    /// <summary>1 where a fuse surely opens on what a source gives, with a conductor behind it that bears nothing for ever; the rows compare as RAIL0302 does.</summary>
    private static double Opens(double amperes, Fuse fuse) => Holds<RailRules.Rules.FaultTooSmallToOpen>(new Supply { Voltage = 54.Volts(), CurrentLimit = new() { Level = amperes.Amperes() } }, fuse);

    private static double Interrupts(double rating, double melting, Supply source) => Holds<RailRules.Rules.InterruptingRatingExceeded>(source, new()
    {
        InterruptingRatings = [new() { Current = rating.Amperes(), Voltage = 250.Volts() }],
        MeltingIntegral = melting.AmpereSquaredSeconds(),
    });

    private static double Proven(double circuit, double tested) => Holds<RailRules.Rules.InterruptingConditionsExceeded>(
        new Supply { Voltage = 54.Volts(), ProspectiveFault = new() { Current = 1.Kiloamperes(), TimeConstant = circuit.Seconds() } },
        new() { InterruptingRatings = [new() { Current = 10.Kiloamperes(), Voltage = 250.Volts(), TimeConstant = tested.Seconds() }] });

    private static double Holds<T>(Supply source, Fuse fuse)
        where T : RailRules.Rules.Rule, new()
    {
        var rail = new Rail
        {
            From = source,
            Path = [fuse with { ColdResistance = 0.Ohms() }, new Wire { Resistance = 0.Ohms(), Ampacity = 0.1.Amperes(), Inductance = UnitsNet.ElectricInductance.Zero }],
            Return = Return.Mirrored,
        };
        var check = new T().Apply(new Network([rail])).Single();
        Assert.NotEqual(Verdict.Undecided, check.Verdict);
        return check.Verdict == Verdict.Holds ? 1 : 0;
    }
}
