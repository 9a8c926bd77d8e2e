using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0003. What contradicts what follows from the definitions of the data (named beside each row); no number here comes from the library.</summary>
public sealed class ContradictoryDatumTests
{
    /// <summary>Every record that a rail can hold, found by reflection, so that a new record cannot be forgotten.</summary>
    private static readonly ImmutableArray<Type> Records = Reachable();

    public static TheoryData<string, string> Leaves() => Data(_ => true);

    public static TheoryData<string, string> Bands() => Data(leaf => IsBand(leaf.PropertyType));

    [Theory]
    [MemberData(nameof(Leaves))]
    public void A_value_below_its_range_is_found(string record, string datum) => AssertFound(record, datum, Below);

    [Theory]
    [MemberData(nameof(Leaves))]
    public void A_value_without_end_is_found(string record, string datum)
    {
        var quantity = ValueType(Leaf(record, datum).PropertyType);
        if (quantity == typeof(int))
        {
            return;
        }

        if (quantity == typeof(Power) || quantity == typeof(Ratio) || quantity == typeof(ElectricInductance))
        {
            // UnitsNet holds power as a decimal and knows no unit above one and one henry, so no such value can be made: the constructor refuses.
            Assert.Throws<ArgumentException>(() => Quantity.From(double.PositiveInfinity, Quantity.ByName[quantity.Name].BaseUnitInfo.Value));
            return;
        }

        AssertFound(record, datum, Endless);
    }

    [Theory]
    [MemberData(nameof(Leaves))]
    public void A_value_that_is_no_number_is_found_or_cannot_be_made(string record, string datum)
    {
        var quantity = ValueType(Leaf(record, datum).PropertyType);
        if (quantity == typeof(double) || quantity == typeof(JouleIntegral))
        {
            AssertFound(record, datum, type => type == typeof(double) ? double.NaN : new JouleIntegral(double.NaN));
        }
        else if (quantity != typeof(int))
        {
            Assert.Throws<ArgumentException>(() => Quantity.From(double.NaN, Quantity.ByName[quantity.Name].BaseUnitInfo.Value));
        }
    }

    [Theory]
    [MemberData(nameof(Bands))]
    public void A_band_out_of_order_is_found(string record, string datum)
    {
        var leaf = Leaf(record, datum);
        var quantity = ValueType(leaf.PropertyType);
        object Value(double value) => quantity == typeof(JouleIntegral) ? new JouleIntegral(value) : Quantity.From(value, Quantity.ByName[quantity.Name].BaseUnitInfo.Value);
        object Band(params double?[] ends) => Activator.CreateInstance(typeof(Band<>).MakeGenericType(quantity), [.. ends.Select(end => end is { } number ? Value(number) : null)])!;

        // Kelvin is the base unit of temperature: 400 K is a plausible value of each datum, as 0.4 and 400 of all others but efficiency.
        var scale = quantity == typeof(Ratio) ? 0.001 : 1;
        foreach (var (band, message) in new[]
        {
            (Band(400 * scale, null, 300 * scale), "min"),
            (Band(400 * scale, 300 * scale, 500 * scale), "min"),
            (Band(300 * scale, 500 * scale, 400 * scale), "typical"),
        })
        {
            var owner = Blank(record);
            leaf.SetValue(owner, band);
            var check = Assert.Single(ContradictoryDatum.Validate(owner), check => check.Places[0] == new DatumPlace(owner, datum));
            Assert.Contains($"{datum} {message} ", check.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_datum_that_a_rail_leads_to_is_looked_at()
    {
        var rail = (Rail)Filled(typeof(Rail), [])!;
        var found = new ContradictoryDatum().Apply(new Network([rail])).Select(check => (check.Places[0].Owner.GetType().Name, check.Places[0].Datum)).ToHashSet();
        var expected = Records.SelectMany(record => LeavesOf(record).Select(leaf => (record.Name, (string?)leaf.Name)));
        Assert.Equal([], expected.Except(found));
    }

    public static TheoryData<string, object, string> Contradictions() => new()
    {
        // A clearing I²t is melting plus arcing (IEC 60269-1), so it cannot be the smaller one.
        { "clearing", new Fuse { Name = "Reed20", MeltingIntegral = 600.AmpereSquaredSeconds(), ClearingIntegrals = [new() { Value = 500.AmpereSquaredSeconds() }] }, "'Reed20': ClearingIntegrals[0].Value 500 A²s contradicts MeltingIntegral 600 A²s" },
        { "breaking", new Fuse { Name = "Reed20", MinimumBreakingCurrent = 2.Kiloamperes(), InterruptingRatings = [new() { Current = 5.Kiloamperes() }, new() { Current = 1.Kiloamperes() }] }, "'Reed20': MinimumBreakingCurrent 2 kA contradicts InterruptingRatings[1].Current 1 kA" },
        { "melting edge", new Fuse { Name = "Reed20", Curve = [new(40.Amperes(), 3.Seconds(), 2.Seconds())] }, "'Reed20': Curve[0].MinimumMelting 3 s contradicts Curve[0].MaximumClearing 2 s" },
        { "melting edge, split points", new Fuse { Name = "Reed20", Curve = [new(40.Amperes(), null, 2.Seconds()), new(60.Amperes(), 3.Seconds(), null)] }, "'Reed20': Curve[1].MinimumMelting 3 s contradicts Curve[0].MaximumClearing 2 s" },
        { "rising curve", new Fuse { Name = "Reed20", Curve = [new(40.Amperes(), 1.Seconds(), 2.Seconds()), new(60.Amperes(), 0.5.Seconds(), 4.Seconds())] }, "'Reed20': Curve[1].MaximumClearing 4 s at 60 A contradicts Curve[0].MaximumClearing 2 s at 40 A" },
        { "unordered curve", new Fuse { Name = "Reed20", Curve = [new(60.Amperes(), 0.5.Seconds(), 1.Seconds()), new(40.Amperes(), 1.Seconds(), 2.Seconds())] }, "'Reed20': Curve[0].Current 60 A contradicts Curve[1].Current 40 A" },
        { "rising derating", new Fuse { Name = "Reed20", Derating = [new(25.Celsius(), 1), new(60.Celsius(), 0.8), new(80.Celsius(), 0.9)] }, "'Reed20': Derating[2].Factor 0.9 at 80 °C contradicts Derating[1].Factor 0.8 at 60 °C" },
        { "derating at reference", new Fuse { Name = "Reed20", ReferenceAmbient = 25.Celsius(), Derating = [new(0.Celsius(), 1), new(50.Celsius(), 0.9)] }, "'Reed20': Derating 0.95 at 25 °C contradicts ReferenceAmbient 25 °C, where the rating holds: 1 ± 0.02 is expected there" },
        { "reference right of the curve", new Fuse { Name = "Reed20", ReferenceAmbient = 25.Celsius(), Derating = [new(0.Celsius(), 0.9)] }, "'Reed20': Derating 0.9 at 25 °C contradicts ReferenceAmbient 25 °C, where the rating holds: 1 ± 0.02 is expected there" },
        { "percent", new Fuse { Name = "Reed20", Derating = [new(60.Celsius(), 90)] }, "'Reed20': Derating[0].Factor 90 contradicts its range, 0 to 2" },
        { "altitude", new CircuitBreaker { Name = "Dyke", AltitudeDerating = [new(2000.Meters(), 1), new(4000.Meters(), 1.1)] }, "'Dyke': AltitudeDerating[1].Factor 1.1 at 4 km contradicts AltitudeDerating[0].Factor 1 at 2 km" },
        { "pulse life", new Fuse { Name = "Reed20", PulseLife = [new(1000, 0.3), new(10000, 0.4)] }, "'Reed20': PulseLife[1].Share 0.4 at 10000 contradicts PulseLife[0].Share 0.3 at 1000" },
        { "body", new Fuse { Name = "Reed20", BodyTemperatureLimit = 85.Celsius(), OperatingTemperature = Band.Of((-40).Celsius(), 125.Celsius()) }, "'Reed20': BodyTemperatureLimit 85 °C contradicts OperatingTemperature max 125 °C" },
        { "magnetic trip", new CircuitBreaker { Name = "Dyke", RatedCurrent = 20.Amperes(), MagneticTrip = 15.Amperes() }, "'Dyke': MagneticTrip 15 A contradicts RatedCurrent 20 A" },
        { "one way", new CircuitBreaker { Name = "Dyke", Polarized = true, ReverseAllowed = true }, "'Dyke': ReverseAllowed true contradicts Polarized true" },

        // Hold current carries for ever, trip current surely trips (IEC 62319-1): equal is a contradiction as well.
        { "hold and trip", new ResettableFuse { Name = "Moss", HoldCurrent = 3.Amperes(), TripCurrent = 3.Amperes() }, "'Moss': HoldCurrent 3 A contradicts TripCurrent 3 A" },
        { "trips below hold", new ResettableFuse { Name = "Moss", HoldCurrent = 3.Amperes(), TimeToTrip = [new(2.Amperes(), 5.Seconds())] }, "'Moss': TimeToTrip[0].Current 2 A contradicts HoldCurrent 3 A" },
        { "bears less than its trip current", new ResettableFuse { Name = "Moss", TripCurrent = 6.Amperes(), MaxFaultCurrent = 5.Amperes() }, "'Moss': MaxFaultCurrent 5 A contradicts TripCurrent 6 A" },
        { "resistance after a trip", new ResettableFuse { Name = "Moss", Resistance = Band.Of(20.Milliohms(), 40.Milliohms()), ResistanceAfterTrip = 10.Milliohms() }, "'Moss': ResistanceAfterTrip 10 mΩ contradicts Resistance min 20 mΩ" },

        // Stand-off below breakdown, breakdown below clamping (IEC 61643-321).
        { "stand-off", new TransientSuppressor { Name = "Sluice", StandOffVoltage = 60.Volts(), BreakdownVoltage = Band.Of(58.Volts(), 70.Volts()) }, "'Sluice': StandOffVoltage 60 V contradicts BreakdownVoltage min 58 V" },
        { "clamping", new TransientSuppressor { Name = "Sluice", BreakdownVoltage = Band.Of(58.Volts(), 70.Volts()), ClampingVoltage = new() { Voltage = 65.Volts() } }, "'Sluice': ClampingVoltage.Voltage 65 V contradicts BreakdownVoltage max 70 V" },
        { "transient", new Supply("Plant") { Voltage = Band.Of(43.Volts(), 57.Volts()), TransientMax = 56.Volts() }, "'Plant': TransientMax 56 V contradicts Voltage max 57 V" },
        { "more digits where three do not tell", new Supply("Plant") { Voltage = Band.Of(43.Volts(), 57.01.Volts()), TransientMax = 57.Volts() }, "'Plant': TransientMax 57 V contradicts Voltage max 57.01 V" },
        { "limit", new Supply("Plant") { ContinuousCurrent = 40.Amperes(), CurrentLimit = new() { Level = Band.Of(30.Amperes(), 35.Amperes()) } }, "'Plant': ContinuousCurrent 40 A contradicts CurrentLimit.Level 35 A" },
        { "band", new Supply("Plant") { Voltage = Band.Of(57.Volts(), 43.Volts()) }, "'Plant': Voltage min 57 V contradicts max 43 V" },
        { "negative", new Fuse { Name = "Reed20", RatedCurrent = (-20).Amperes() }, "'Reed20': RatedCurrent -20 A contradicts its range, above 0 A" },
        { "minimum and maximum", new Load { Name = "Sled", MinVoltage = 40.Volts(), MaxVoltage = 40.Volts() }, "'Sled': MinVoltage 40 V contradicts MaxVoltage 40 V" },
        { "efficiency", new Converter("Brick") { Efficiency = Ratio.FromPercent(104) }, "'Brick': Efficiency 1.04 contradicts its range, above 0 to 1" },
        { "converter input", new Converter("Brick") { InputMinVoltage = 75.Volts(), InputMaxVoltage = 36.Volts() }, "'Brick': InputMinVoltage 75 V contradicts InputMaxVoltage 36 V" },
        { "policy", new DesignPolicy { Name = "house", VoltageFraction = 1.2 }, "'house': VoltageFraction 1.2 contradicts its range, above 0 to 1" },
        { "limiter", new InrushLimiter { Name = "Warm", ColdResistance = 1.Ohms(), HotResistance = 5.Ohms() }, "'Warm': HotResistance 5 Ω contradicts ColdResistance 1 Ω" },
        { "short-time limit", new Wire { Name = "Lead", TemperatureLimit = 105.Celsius(), ShortTimeLimit = 90.Celsius() }, "'Lead': ShortTimeLimit 90 °C contradicts TemperatureLimit 105 °C" },
        { "safe area", new Switch { Name = "Gate", SafeOperatingArea = new() { Points = [new(10.Volts(), 5.Amperes(), 1.Milliseconds()), new(20.Volts(), 6.Amperes(), 1.Milliseconds()), new(5.Volts(), 1.Amperes(), 10.Milliseconds())] } }, "'Gate': SafeOperatingArea.Points[1].Current 6 A at 20 V contradicts SafeOperatingArea.Points[0].Current 5 A at 10 V" },
        { "pulse", new Load { Name = "Sled", Pulses = [new() { Width = 2.Seconds(), Period = 1.Seconds() }] }, "'Sled': Pulses[0].Width 2 s contradicts Pulses[0].Period 1 s" },
        { "battery", new Battery("Pack") { ChargeVoltage = 50.Volts(), OpenCircuitVoltage = 54.6.Volts() }, "'Pack': ChargeVoltage 50 V contradicts OpenCircuitVoltage 54.6 V" },
    };

    [Theory]
    [MemberData(nameof(Contradictions))]
    public void Data_that_exclude_each_other_are_found(string why, object part, string message)
    {
        Assert.NotEmpty(why);
        var check = Assert.Single(ContradictoryDatum.Validate(part));
        Assert.Equal(message, check.Message);
        Assert.Equal(("RAIL0003", Verdict.Fails, null), (check.Rule, check.Verdict, check.Margin));
    }

    [Fact]
    public void Data_that_agree_give_no_finding()
    {
        Assert.Empty(ContradictoryDatum.Validate(SoundFuse));
        Assert.Empty(ContradictoryDatum.Validate(new Fuse()));
        Assert.Empty(ContradictoryDatum.Validate(DesignPolicy.Default));
        Assert.Empty(ContradictoryDatum.Validate("no object of the model"));
        Assert.Empty(ContradictoryDatum.Validate(SoundFuse with { Derating = default, Curve = default, Alternates = default, InterruptingRatings = default }));
        Assert.Empty(ContradictoryDatum.Validate(new Fuse { Derating = [null!], Curve = [null!], ClearingIntegrals = [null!] }));
    }

    [Fact]
    public void A_derating_curve_may_be_written_from_hot_to_cold() =>
        Assert.Empty(ContradictoryDatum.Validate(new Fuse { ReferenceAmbient = 25.Celsius(), Derating = [new(80.Celsius(), 0.8), new(25.Celsius(), 1), new((-40).Celsius(), 1.1)] }));

    [Fact]
    public void Any_falling_curve_through_one_at_its_reference_agrees_and_any_raised_point_does_not() =>
        Gen.Select(Gen.Double[0.0, 0.3].Array[2, 6], Gen.Int[0, 5]).Sample((steps, raised) =>
        {
            var factors = steps.Skip(1).Aggregate(new List<double> { 1 }, (list, step) => [.. list, Math.Max(0, list[^1] - step)]);
            var points = factors.Select((factor, index) => new DeratingPoint((25 + (10 * index)).Celsius(), factor)).ToList();
            Assert.Empty(ContradictoryDatum.Validate(new Fuse { ReferenceAmbient = 25.Celsius(), Derating = [.. points] }));
            var at = 1 + (raised % (points.Count - 1));
            points[at] = points[at] with { Factor = points[at - 1].Factor + 0.01 };
            Assert.NotEmpty(ContradictoryDatum.Validate(new Fuse { ReferenceAmbient = 25.Celsius(), Derating = [.. points] }));
        });

    [Fact]
    public void A_part_copied_to_many_places_gives_one_finding_with_all_its_places()
    {
        var bad = SoundFuse with { RatedCurrent = (-1).Amperes(), Derating = [new(25.Celsius(), -1)] };
        var rails = Enumerable.Range(1, 8).Select(slot => new Rail($"Sled {slot}") { Path = [bad.As($"F{slot}")] }).ToList();
        var checks = new ContradictoryDatum().Apply(new Network(rails)).ToList();
        var rated = Assert.Single(checks, check => check.Message.Contains("RatedCurrent", StringComparison.Ordinal));
        Assert.Equal(8, rated.Places.Count(place => place.Datum == nameof(Fuse.RatedCurrent)));
        Assert.Single(checks, check => check.Message.Contains("Derating[0].Factor", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_different_parts_with_the_same_fault_give_two_findings()
    {
        var rail = new Rail("Bus") { Path = [new Fuse { Name = "A", RatedCurrent = (-1).Amperes() }, new Fuse { Name = "B", RatedCurrent = (-1).Amperes() }] };
        Assert.Equal(2, new ContradictoryDatum().Apply(new Network([rail])).Count());
    }

    [Fact]
    public void A_datum_that_is_bad_by_itself_is_named_once()
    {
        var fuse = new Fuse { Name = "Reed20", MeltingIntegral = 600.AmpereSquaredSeconds(), ClearingIntegrals = [new() { Value = (-5).AmpereSquaredSeconds() }], Derating = [new(25.Celsius(), 1), new(60.Celsius(), 86)] };
        Assert.Equal(
            ["'Reed20': ClearingIntegrals[0].Value -5 A²s contradicts its range, 0 A²s and up", "'Reed20': Derating[1].Factor 86 contradicts its range, 0 to 2"],
            ContradictoryDatum.Validate(fuse).Select(check => check.Message));
    }

    [Fact]
    public void A_datum_within_a_datum_is_shown_where_it_is_written_then_where_it_stands()
    {
        var rating = new InterruptingRating { Current = (-5).Amperes() };
        var fuse = new Fuse { Name = "Reed20", InterruptingRatings = [new(), rating] };
        var check = Assert.Single(ContradictoryDatum.Validate(fuse));
        Assert.Equal([new DatumPlace(rating, "Current"), new DatumPlace(fuse, "InterruptingRatings", 1)], check.Places.AsEnumerable());
        Assert.Equal("'Reed20': InterruptingRatings[1].Current -5 A contradicts its range, 0 A and up", check.Message);
    }

    [Fact]
    public void Surroundings_and_nameless_loads_are_named_by_their_rail()
    {
        var rail = new Rail("Bus") { Surroundings = new() { Ambient = Band.Of(60.Celsius(), 40.Celsius()) }, Loads = [new() { Power = (-5).Watts() }] };
        Assert.Equal(
            ["'Bus': Loads[0].Power -5 W contradicts its range, 0 W and up", "'Bus': Surroundings.Ambient min 60 °C contradicts max 40 °C"],
            new ContradictoryDatum().Apply(new Network([rail])).Select(check => check.Message).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_transient_below_what_the_source_gives_is_found_along_the_chain()
    {
        var plant = new Supply("Plant") { Voltage = Band.Of(43.Volts(), 57.Volts()) };
        var bus = new Rail("Bus") { From = plant };
        var sled = new Rail("Sled") { From = bus, TransientMax = 50.Volts() };
        var check = Assert.Single(new ContradictoryDatum().Apply(new Network([bus, sled])));
        Assert.Equal("'Sled': TransientMax 50 V contradicts Voltage 57 V of 'Plant'", check.Message);
        Assert.Equal([new DatumPlace(sled, "TransientMax"), new DatumPlace(plant, "Voltage")], check.Places.AsEnumerable());
    }

    [Fact]
    public void A_fault_loop_without_any_resistance_is_found_once_and_only_when_all_of_it_is_stated()
    {
        var ideal = new Supply("Ideal") { Voltage = 12.Volts(), SourceResistance = 0.Ohms() };
        var lug = new Connector { Name = "Lug", ContactResistance = 0.Ohms() };
        var bus = new Rail("Bus") { From = ideal, Path = [lug], Return = Return.Mirrored };
        var spur = new Rail("Spur") { From = bus, Path = [lug], Return = Return.Mirrored };
        var check = Assert.Single(new ContradictoryDatum().Apply(new Network([bus, spur])));
        Assert.Equal("'Ideal': SourceResistance 0 Ω contradicts the fault loop of 'Bus', 0 Ω in all: nothing would limit its fault current", check.Message);

        Assert.Empty(new ContradictoryDatum().Apply(new Network([new Rail("Bus") { From = ideal, Path = [lug] }])));
        Assert.Empty(new ContradictoryDatum().Apply(new Network([new Rail("Bus") { From = ideal, Path = [lug, new Wire { Length = 1.Meters() }], Return = Return.Mirrored }])));
        Assert.Empty(new ContradictoryDatum().Apply(new Network([new Rail("Bus") { From = ideal, Path = [lug], Return = Return.OfResistance(1.Milliohms()) }])));
        Assert.Empty(new ContradictoryDatum().Apply(new Network([new Rail("Bus") { From = ideal with { CurrentLimit = new() { Level = 20.Amperes() } }, Path = [lug], Return = Return.Mirrored }])));
    }

    [Fact]
    public void A_chain_of_ten_thousand_rails_and_a_circle_are_walked_without_recursion()
    {
        var rail = new Rail("R0") { From = new Supply("S") { Voltage = 12.Volts() } };
        var rails = new List<Rail> { rail };
        for (var index = 1; index < 10_000; index++)
        {
            rails.Add(rail = new Rail($"R{index}") { From = rail });
        }

        Assert.Empty(new ContradictoryDatum().Apply(new Network(rails)));
        Set(rails[0], rail);
        Assert.Empty(new ContradictoryDatum().Apply(new Network(rails)));
    }

    /// <summary>Closes a circle, which plain C# cannot.</summary>
    internal static void Set(Rail rail, Source? from) => typeof(Rail).GetProperty(nameof(Rail.From))!.SetValue(rail, from);

    /// <summary>Invented; every datum agrees with every other.</summary>
    private static Fuse SoundFuse => new()
    {
        Name = "Sound",
        RatedCurrent = 20.Amperes(),
        DcVoltageRating = 80.Volts(),
        AcVoltageRating = 125.Volts(),
        InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 1.Milliseconds() }],
        MinimumBreakingCurrent = 40.Amperes(),
        MeltingIntegral = Band.Of(500.AmpereSquaredSeconds(), 600.AmpereSquaredSeconds(), 700.AmpereSquaredSeconds()),
        ClearingIntegrals = [new() { Value = 900.AmpereSquaredSeconds(), Voltage = 80.Volts() }],
        Curve = [new(40.Amperes(), 5.Seconds(), 60.Seconds()), new(80.Amperes(), 0.2.Seconds(), 1.Seconds()), new(200.Amperes(), 0.02.Seconds(), 0.05.Seconds())],
        ReferenceAmbient = 25.Celsius(),
        Derating = [new((-40).Celsius(), 1.1), new(25.Celsius(), 1), new(85.Celsius(), 0.8)],
        PulseLife = [new(100, 0.48), new(100_000, 0.22)],
        OperatingTemperature = Band.Of((-40).Celsius(), 85.Celsius()),
        BodyTemperatureLimit = 125.Celsius(),
    };

    private static TheoryData<string, string> Data(Func<PropertyInfo, bool> isWanted)
    {
        var data = new TheoryData<string, string>();
        foreach (var record in Records)
        {
            foreach (var leaf in LeavesOf(record).Where(isWanted))
            {
                data.Add(record.Name, leaf.Name);
            }
        }

        return data;
    }

    private static void AssertFound(string record, string datum, Func<Type, object> bad)
    {
        var leaf = Leaf(record, datum);
        foreach (var value in Bad(leaf.PropertyType, bad))
        {
            var owner = Blank(record);
            leaf.SetValue(owner, value);
            var check = Assert.Single(ContradictoryDatum.Validate(owner), check => check.Places[0] == new DatumPlace(owner, datum) && check.Message.Contains(" contradicts its range, ", StringComparison.Ordinal));
            Assert.Equal(Verdict.Fails, check.Verdict);
        }
    }

    /// <summary>The bad value itself, or bands with it at either end and in the middle.</summary>
    private static IEnumerable<object> Bad(Type type, Func<Type, object> bad)
    {
        var quantity = ValueType(type);
        if (!IsBand(type))
        {
            return [bad(quantity)];
        }

        var band = typeof(Band<>).MakeGenericType(quantity);
        var good = Activator.CreateInstance(quantity);
        var value = bad(quantity);
        return [Activator.CreateInstance(band, value, value, value)!, Activator.CreateInstance(band, value, null, good)!, Activator.CreateInstance(band, good, null, value)!, Activator.CreateInstance(band, good, value, good)!];
    }

    private static object Below(Type quantity) => quantity switch
    {
        _ when quantity == typeof(int) => 0,
        _ when quantity == typeof(double) => -1.0,
        _ when quantity == typeof(JouleIntegral) => new JouleIntegral(-1),
        _ when quantity == typeof(Temperature) => Temperature.FromKelvins(-1),
        _ => Quantity.From(-1000, Quantity.ByName[quantity.Name].BaseUnitInfo.Value),
    };

    private static object Endless(Type quantity)
    {
        if (quantity == typeof(double) || quantity == typeof(JouleIntegral))
        {
            return quantity == typeof(double) ? double.PositiveInfinity : new JouleIntegral(double.PositiveInfinity);
        }

        // UnitsNet refuses infinity, but not a value that is infinite in its base unit.
        var info = Quantity.ByName[quantity.Name];
        foreach (var unit in info.UnitInfos)
        {
            var value = Quantity.From(1e308, unit.Value);
            try
            {
                value.As(info.BaseUnitInfo.Value);
            }
            catch (ArgumentException)
            {
                return value;
            }
            catch (OverflowException)
            {
                return value;
            }
        }

        throw new InvalidOperationException($"{quantity.Name} has no unit above its base unit");
    }

    private static PropertyInfo Leaf(string record, string datum) => Records.Single(type => type.Name == record).GetProperty(datum)!;

    private static object Blank(string record) => RuntimeHelpers.GetUninitializedObject(Records.Single(type => type.Name == record));

    private static bool IsBand(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is { IsGenericType: true } band && band.GetGenericTypeDefinition() == typeof(Band<>);

    private static Type ValueType(Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        return IsBand(plain) ? plain.GetGenericArguments()[0] : plain;
    }

    private static bool IsLeaf(Type type) =>
        ValueType(type) is var value && (value == typeof(int) || value == typeof(double) || value == typeof(JouleIntegral) || typeof(IQuantity).IsAssignableFrom(value));

    private static IEnumerable<PropertyInfo> Properties(Type record) =>
        record.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0 && property.SetMethod is not null);

    private static IEnumerable<PropertyInfo> LeavesOf(Type record) => Properties(record).Where(property => IsLeaf(property.PropertyType));

    private static Type ItemType(Type type)
    {
        while (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>))
        {
            type = type.GetGenericArguments()[0];
        }

        return type;
    }

    private static IEnumerable<Type> Concrete(Type type) =>
        type.IsAbstract ? type.Assembly.GetTypes().Where(derived => type.IsAssignableFrom(derived) && !derived.IsAbstract) : [type];

    private static bool IsRecord(Type type) => type.IsClass && type != typeof(string) && type.Assembly == typeof(Rail).Assembly;

    private static ImmutableArray<Type> Reachable()
    {
        var found = new List<Type>();
        var work = new Queue<Type>([typeof(Rail), typeof(DesignPolicy)]);
        while (work.Count > 0)
        {
            var type = work.Dequeue();
            if (found.Contains(type))
            {
                continue;
            }

            found.Add(type);
            foreach (var held in Properties(type).Select(property => ItemType(property.PropertyType)).Where(IsRecord).SelectMany(Concrete))
            {
                work.Enqueue(held);
            }
        }

        return [.. found];
    }

    /// <summary>An object with a bad value in every datum and one of everything it can hold.</summary>
    private static object? Filled(Type type, ImmutableStack<Type> within)
    {
        // A type within itself (groups in groups, a rail above a rail) and alternates of alternates would have no end.
        if (within.Contains(type) || (typeof(Element).IsAssignableFrom(type) && within.Count(typeof(Element).IsAssignableFrom) > 1))
        {
            return null;
        }

        var inner = within.Push(type);
        var owner = RuntimeHelpers.GetUninitializedObject(type);
        foreach (var property in Properties(type))
        {
            if (IsLeaf(property.PropertyType))
            {
                property.SetValue(owner, Bad(property.PropertyType, Below).First());
            }
            else if (property.PropertyType == typeof(ImmutableArray<ImmutableArray<Element>>))
            {
                property.SetValue(owner, ImmutableArray.Create(ImmutableArray.CreateRange(Concrete(typeof(Element)).Select(element => Filled(element, inner)).OfType<Element>())));
            }
            else if (IsRecord(ItemType(property.PropertyType)))
            {
                var items = Concrete(ItemType(property.PropertyType)).Select(item => Filled(item, inner)).Where(item => item is not null).ToArray();
                if (property.PropertyType == ItemType(property.PropertyType))
                {
                    // Of the sources, each in its turn: the rail's own is the supply, that of a feed the converter; the battery is added below.
                    property.SetValue(owner, type == typeof(Feed) ? items.OfType<Converter>().FirstOrDefault() : items.FirstOrDefault(item => item is Supply) ?? items.FirstOrDefault());
                }
                else
                {
                    var array = Array.CreateInstance(ItemType(property.PropertyType), items.Length);
                    items.CopyTo(array, 0);
                    property.SetValue(owner, typeof(ImmutableArray).GetMethods().Single(method => method.Name == "Create" && method.GetParameters() is [{ ParameterType.IsArray: true }])
                        .MakeGenericMethod(ItemType(property.PropertyType)).Invoke(null, [array]));
                }
            }
        }

        if (owner is Rail rail)
        {
            var battery = new Feed { From = (Battery?)Filled(typeof(Battery), inner) };
            type.GetProperty(nameof(Rail.Feeds))!.SetValue(rail, rail.Feeds.Add(battery));
        }

        return owner;
    }
}
