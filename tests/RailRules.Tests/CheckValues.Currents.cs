using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using RailRules.Physics;
using RailRules.Tests.Reference;

namespace RailRules.Tests;

public partial class CheckValues
{
    /// <summary>How each row on continuous current, derating, altitude, voltage ratings and conductors is computed, by the rules where a rule compares it.</summary>
    private static readonly Dictionary<string, Func<Row, double>> Currents = new(StringComparer.Ordinal)
    {
        // Continuous use: what RAIL0201 lets a device carry, and the rating at which a duty just holds.
        ["FC-01"] = row => MayCarry(Rated(row["In_A"], RatingBasis.CarriesThreeQuarters)),
        ["FC-02"] = row => LeastRating(row["Iload_A"], rating => Rated(rating, RatingBasis.CarriesThreeQuarters)),
        ["FC-03"] = row => MayCarry(Rated(row["In_A"], RatingBasis.CarriesRating)),
        ["FC-04"] = row => LeastRating(row["Iload_A"], rating => Rated(rating, RatingBasis.CarriesThreeQuarters) with { Derating = [new(25.Celsius(), 1), new(60.Celsius(), row["Kt"])] }, 60),
        ["FC-05"] = row => LeastRating(row["Iload_A"], rating => Rated(rating, RatingBasis.CarriesRating) with { Derating = [new(25.Celsius(), 1), new(60.Celsius(), row["Kt"])] }, 60),
        ["FC-06"] = row => LeastRating(row["Icont_A"], rating => new CircuitBreaker { RatedCurrent = rating.Amperes(), ReferenceAmbient = 25.Celsius() }),
        ["FC-08"] = row => MayCarry(new CircuitBreaker { RatedCurrent = row["In_A"].Amperes(), ReferenceAmbient = 25.Celsius() }),

        // Ambient: the curve through the points of the specification, read by RAIL0201.
        ["AD-03"] = row => DeratingAt(row["T_C"], (row["T1_C"], row["k1"]), (row["T2_C"], row["k2"])),
        ["AD-04"] = row => DeratingAt(row["T_C"], (row["T1_C"], row["k1"]), (row["T2_C"], row["k2"])),

        // Altitude.
        ["AL-01"] = row => HighestAltitudeWithoutDerating(),
        ["AL-02"] = row => AltitudeFactor(row["h_m"]),
        ["AL-03"] = row => AltitudeFactor(row["h_m"]),

        // Traces by IPC-2221.
        ["PT-01"] = row => Conductors.TraceCurrent(SquareMils(row["w_mil"] * row["thk_mil"]), row["dT_K"], inner: false),
        ["PT-02"] = row => Conductors.TraceCurrent(SquareMils(row["w_mil"] * row["thk_mil"]), row["dT_K"], inner: true),
        ["PT-03"] = row => Conductors.TraceCurrent(SquareMils(row["w_mil"] * row["thk_mil"]), row["dT_K"], inner: false),
        ["PT-04"] = row => Conductors.TraceCurrent(SquareMils(row["w_mil"] * row["thk_mil"]), row["dT_K"], inner: false),
        ["PT-05"] = row => Conductors.TraceSection(row["I_A"], row["dT_K"], inner: false) / SquareMils(row["thk_mil"]),
        ["PT-06"] = row => Conductors.TraceSection(row["I_A"], row["dT_K"], inner: true) / SquareMils(row["thk_mil"]),
        ["PT-07"] = row => Conductors.TraceRise(row["I_A"], row["w_mm"] * row["thk_um"] * 1e-9, inner: false),
        ["PT-08"] = row => Conductors.TraceCurrent(1e-6, 20, inner: true) / Conductors.TraceCurrent(1e-6, 20, inner: false),
        ["PT-09"] = row => 1e3 * Conductors.Resistance(Conductors.CopperResistivity, row["L_m"], row["w_m"] * row["thk_m"]),
        ["PT-10"] = row => 1e3 * Conductors.Resistance(Conductors.CopperResistivity, row["L_m"], row["w_m"] * row["thk_m"]) * Conductors.TemperatureFactor(Conductors.CopperCoefficient, row["T_C"]),

        // Wires: copper by section and temperature.
        ["WR-07"] = row => OhmsPerThousandFeet(row["awg"]),
        ["WR-08"] = row => OhmsPerThousandFeet(row["awg"]),
        ["WR-09"] = row => OhmsPerThousandFeet(row["awg"]),
        ["WR-10"] = row => OhmsPerThousandFeet(row["awg"]),
        ["WR-11"] = row => OhmsPerThousandFeet(row["awg"]),
        ["WR-20"] = row => Conductors.CopperResistivity * 1e6,
        ["WR-21"] = row => Conductors.CopperCoefficient,
        ["WR-22"] = row => (1 / Conductors.CopperCoefficient) - 20,
        ["WR-23"] = row => Conductors.TemperatureFactor(Conductors.CopperCoefficient, row["T_C"]),
        ["WR-25"] = row => TwoWayDrop(row, 20),
        ["WR-26"] = row => TwoWayDrop(row, row["T_C"]),

        // Sharing among fuses in parallel, from the solved network.
        ["PF-01"] = row => Shared(row["I_A"], row["R1_mohm"], row["R2_mohm"]),
        ["PF-02"] = row => row["In_A"] / Shared(1, row["R1"], row["R2"]),

        ["CN-03"] = row => WorstPin(row["I_A"], (int)row["n"]),

        // Overload of conductors by RAIL0204: 1 where it holds, and the least continuous current with which it does.
        ["OL-01"] = row => Protects(row["In_A"], 1.0, row["Iz_A"]) ? 1 : 0,
        ["OL-02"] = row => Protects(row["In_A"], row["m"], row["Iz_A"]) ? 1 : 0,
        ["KW-15"] = row => LeastContinuous(row["In_A"], row["I2_factor"]),

        // What a constant power draws at the lowest, usual and highest voltage.
        ["SC-19"] = row => Drawn(row["P_W"] / row["eta"], row["Vmin"]),
        ["SC-20"] = row => Drawn(row["P_W"] / row["eta"], row["Vnom"]),
        ["SC-21"] = row => Drawn(row["P_W"] / row["eta"], row["Vmax"]),

        // Voltage ratings: 1 where RAIL0101 and RAIL0102 hold.
        ["VR-01"] = row => Bears(new Fuse { DcVoltageRating = row["Vdc_rated"].Volts() }, row["Vmax"]),
        ["VR-02"] = row => Bears(new Fuse { DcVoltageRating = row["Vdc_rated"].Volts() }, row["Vmax"]),
        ["VR-03"] = row => Bears(new Fuse { AcVoltageRating = row["Vac_rated"].Volts() }, row["Vmax"]),

        // A supply's voltage in service: float voltage by cells, as the highest steady voltage of a rail.
        ["BU-11"] = row => HighVoltage(new Battery("Float") { OpenCircuitVoltage = (row["cells"] * 2.1).Volts(), ChargeVoltage = (row["cells"] * row["Vcell"]).Volts() }),
    };

    public static TheoryData<string> CurrentRows() => [.. Currents.Keys];

    [Theory]
    [MemberData(nameof(CurrentRows))]
    public void Current(string id) => Check(id, Currents[id](Rows[id]));

    /// <summary>Rows that nothing computes yet stand in docs/check-values.md with the reason; together with the computed ones they are all rows.</summary>
    [Fact]
    public void Every_row_is_computed_or_listed_with_a_reason()
    {
        var computed = typeof(CheckValues).GetFields(BindingFlags.Static | BindingFlags.NonPublic)
            .Select(field => field.GetValue(null)).OfType<Dictionary<string, Func<Row, double>>>().SelectMany(rows => rows.Keys).ToList();
        var listed = RowId().Matches(File.ReadAllText(Repository.PathOf("docs", "check-values.md"))).SelectMany(match => Expand(match.Value)).ToList();
        Assert.Equal(listed.Count, listed.Distinct().Count());
        Assert.Equal([], listed.Intersect(computed));
        Assert.Equal([], Rows.Keys.Except(computed).Except(listed));
        Assert.Equal([], listed.Except(Rows.Keys));
    }

    [GeneratedRegex(@"\b[A-Z]{2}-\d{2}( to [A-Z]{2}-\d{2})?\b")]
    private static partial Regex RowId();

    /// <summary>"FC-01 to FC-03" is three rows.</summary>
    private static IEnumerable<string> Expand(string text)
    {
        var ends = text.Split(" to ");
        var (prefix, first) = (ends[0].Split('-')[0], ends[0].Split('-')[1]);
        var last = int.Parse(ends[^1].Split('-')[1], CultureInfo.InvariantCulture);
        for (var number = int.Parse(first, CultureInfo.InvariantCulture); number <= last; number++)
        {
            yield return $"{prefix}-{number.ToString("D" + first.Length, CultureInfo.InvariantCulture)}";
        }
    }

    /// <summary>Whether RAIL0204 holds for a conductor behind a breaker that trips for certain at a multiple of its rated current.</summary>
    private static bool Protects(double rated, double multiple, double continuous)
    {
        var wire = new Wire { Ampacity = continuous.Amperes() };
        var rail = new Rail("Row")
        {
            From = new Supply("Source") { Voltage = 24.Volts() },
            Path = [new CircuitBreaker { RatedCurrent = rated.Amperes(), ConventionalTripMultiple = multiple }, wire],
        };
        return Engine.Check([rail]).Single(check => check.Rule == "RAIL0204" && ReferenceEquals(check.Places[1].Owner, wire)).Verdict == Verdict.Holds;
    }

    private static double LeastContinuous(double rated, double multiple)
    {
        var (low, high) = (rated / 10, rated * 10);
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = Protects(rated, multiple, middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static Fuse Rated(double amperes, RatingBasis basis) => new() { RatedCurrent = amperes.Amperes(), RatingBasis = basis, ReferenceAmbient = 25.Celsius() };

    /// <summary>The check of RAIL0201 on a device in a rail of its own.</summary>
    private static Check Margin(Element device, double amperes, double ambient = 25, double altitude = 0)
    {
        var rail = new Rail("Row")
        {
            From = new Supply("Source") { Voltage = 24.Volts() },
            Path = [device],
            Surroundings = new() { Ambient = ambient.Celsius(), Altitude = altitude.Meters() },
            Loads = [new() { Current = amperes.Amperes() }],
        };
        return Engine.Check([rail]).Single(check => check.Rule == "RAIL0201" && check.Places.Any(place => ReferenceEquals(place.Owner, device)));
    }

    private static double MayCarry(Element device) => Margin(device, 1).Capacity!.Value.Value;

    /// <summary>The smallest rating with which the check holds, by halving.</summary>
    private static double LeastRating(double amperes, Func<double, Element> device, double ambient = 25)
    {
        var (low, high) = (0.1 * amperes, 10 * amperes);
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = Margin(device(middle), amperes, ambient).Verdict == Verdict.Holds ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static double DeratingAt(double celsius, params (double Celsius, double Factor)[] points)
    {
        var fuse = Rated(1, RatingBasis.CarriesRating) with
        {
            ReferenceAmbient = null,
            Derating = [.. points.Select(point => new DeratingPoint(point.Celsius.Celsius(), point.Factor))],
            Policy = new() { CreditCold = true },
        };
        return Margin(fuse, 0.1, celsius).Capacity!.Value.Value;
    }

    private static double AltitudeFactor(double meters) => Margin(Rated(1, RatingBasis.CarriesRating), 0.1, altitude: meters).Capacity!.Value.Value;

    private static double HighestAltitudeWithoutDerating() => Enumerable.Range(0, 60).Select(step => 100.0 * step).Last(meters => AltitudeFactor(meters) == 1);

    private static double Bears(Fuse fuse, double volts)
    {
        var rail = new Rail("Row") { From = new Supply("Source") { Voltage = volts.Volts() }, Path = [fuse] };
        return Engine.Check([rail]).Where(check => check.Rule is "RAIL0101" or "RAIL0102").Any(check => check.Verdict == Verdict.Fails) ? 0 : 1;
    }

    private static double HighVoltage(Battery battery)
    {
        var rail = new Rail("Row") { From = battery, Path = [new Fuse { DcVoltageRating = 1000.Volts() }] };
        return Engine.Check([rail]).Single(check => check.Rule == "RAIL0101").Demand!.Value.Value;
    }

    /// <summary>The larger share of a current in two fuses of the given resistances.</summary>
    private static double Shared(double amperes, double first, double second)
    {
        var currents = new double[2];
        Sharing.Share([(first, 0), (second, 0)], amperes, currents);
        return currents.Max();
    }

    /// <summary>One contact at 0.8 of the usual resistance, the others at 1.2 of it.</summary>
    private static double WorstPin(double amperes, int contacts)
    {
        var currents = new double[contacts];
        Sharing.Share([.. Enumerable.Range(0, contacts).Select(index => (index == 0 ? 0.8 : 1.2, 0.0))], amperes, currents);
        return currents.Max();
    }

    /// <summary>The demand of RAIL0201 on a device before a load of constant power.</summary>
    private static double Drawn(double watts, double volts)
    {
        var fuse = Rated(1000, RatingBasis.CarriesRating) with { ColdResistance = 0.Ohms() };
        var rail = new Rail("Row")
        {
            From = new Supply("Source") { Voltage = volts.Volts() },
            Path = [fuse],
            Return = Return.OfResistance(0.Ohms()),
            Surroundings = new() { Ambient = 25.Celsius() },
            Loads = [new() { Power = watts.Watts() }],
        };
        return Engine.Check([rail]).Single(check => check.Rule == "RAIL0201" && check.Places.Any(place => ReferenceEquals(place.Owner, fuse))).Demand!.Value.Value;
    }

    private static double SquareMils(double squareMils) => squareMils * 25.4e-6 * 25.4e-6;

    private static double OhmsPerThousandFeet(double gauge)
    {
        // ASTM B258: the 39th root of 92 between gauges.
        var diameter = 0.127e-3 * Math.Pow(92, (36 - gauge) / 39);
        return Conductors.Resistance(Conductors.CopperResistivity, 304.8, Math.PI * diameter * diameter / 4);
    }

    private static double TwoWayDrop(Row row, double celsius)
    {
        // The solved circuit: both conductors in one branch, the current as a constant load.
        var oneWay = row["r_ohm_km"] * 1e-3 * row["L_m"] * Conductors.TemperatureFactor(Conductors.CopperCoefficient, celsius);
        var circuit = new Circuit();
        var source = circuit.AddSource(48);
        var end = circuit.AddNode();
        circuit.AddBranch(source, 2 * oneWay);
        circuit.AddLoad(end, row["I_A"], 0);
        return 48 - OperatingPoint.Solve(circuit)!.Voltages[end];
    }
}
