using System.Collections.Immutable;
using System.Reflection;
using RailRules.Tables;
using UnitsNet;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>Every datum of every part can be stated in a table, and comes out as the same datum written in C#.</summary>
public sealed class TableColumnsTests
{
    [Fact]
    public void Records_of_parts_are_those_that_have_a_part_number()
    {
        var parts = typeof(Element).Assembly.GetExportedTypes().Where(type => type is { IsClass: true, IsAbstract: false } && type.GetProperty("PartNumber") is not null).Select(type => type.Name);
        Assert.Equal(parts.Except(["ParallelGroup"]).Order(StringComparer.Ordinal), TableRecord.All.Select(record => record.Name));
        Assert.Contains("Fuse", TableRecord.All.Select(record => record.Name));
        Assert.Contains("TransientSuppressor", TableRecord.All.Select(record => record.Name));
    }

    /// <summary>A property that is new in the model has a column by itself, or makes this fail until its type is one that tables know.</summary>
    [Fact]
    public void Every_property_of_every_part_has_a_column_or_a_reason_why_not()
    {
        var missing = from record in TableRecord.All
                      from property in record.Type.GetProperties(BindingFlags.Instance | BindingFlags.Public)
                      where property.SetMethod is { IsPublic: true }
                      where TableRecord.ReasonLeftOut(property) is null && !record.Columns.Any(column => column.Datum == property.Name)
                      select record.Name + "." + property.Name;
        Assert.Empty(missing);
    }

    /// <summary>Of a datum with lists in it each datum has a column of its own, and none is left out.</summary>
    [Fact]
    public void Every_property_within_a_datum_has_a_column()
    {
        var missing = from record in TableRecord.All
                      from column in record.Columns
                      where column.Inner is not null
                      from inner in column.Property.PropertyType.GetProperties()
                      where inner.SetMethod is { IsPublic: true } && !record.Columns.Any(other => other.Property == column.Property && other.Inner == inner)
                      select record.Name + "." + column.Datum + "." + inner.Name;
        Assert.Empty(missing);
    }

    public static TheoryData<string> EveryColumn() => [.. TableRecord.All.SelectMany(record => record.Columns.Select(column => record.Name + " " + column.Name))];

    /// <summary>States each datum once, in its first unit, and finds it in the part, and nothing else.</summary>
    [Theory]
    [MemberData(nameof(EveryColumn))]
    public void A_stated_datum_is_in_the_part_and_no_other(string name)
    {
        var record = TableRecord.Find(name.Split(' ')[0])!;
        var column = record.FindColumn(name.Split(' ')[1])!;
        var units = string.Join(column.Shape.UnitSeparator, column.Shape.Scalars.Where(scalar => scalar.Units.Length > 0).Select(scalar => scalar.Units[0].Symbol));
        var text = $"{record.Name},{column.Name}{(units.Length == 0 ? "" : $" [{units}]")}\nP,{Sample(column.Shape)}\n";
        if (column.Shape is TablePartNumbers)
        {
            text += "Q,\n";
        }

        var table = PartsTableText.Read(text);
        Assert.Empty(table.Faults.Select(fault => fault.Message));
        var part = table.Make(table.Rows[0]);
        var bare = record.Create("P");
        foreach (var property in record.Type.GetProperties().Where(property => property.SetMethod is { IsPublic: true }))
        {
            var same = Said.By(property.GetValue(bare)) == Said.By(property.GetValue(part));
            Assert.True(same == (property.Name != column.Datum), property.Name + " " + Said.By(property.GetValue(part)));
        }
    }

    [Fact]
    public void A_row_is_the_part_that_the_same_data_in_CSharp_are()
    {
        var table = PartsTableText.Read(""""
            Fuse,RatedCurrent [A],DcVoltageRating [V],InterruptingRatings [A@V@ms],MeltingIntegral [A2s],ClearingIntegrals [A²s@V@ms@A],Curve [A:s:s],RatingBasis,ReferenceAmbient [degC],Derating [°C:%],AltitudeDerating [km],PulseLife,ColdResistance [mOhm],VoltageDrop [mV],TemperatureRise [K],OperatingTemperature [°C],Flammability,Joint,Qualifications,Inductance [uH],ShortCircuitProof,Characteristic,Citation
            Reed-20,20,80,10000@80@2 1000@150 50@250@@AC,300..320..350,900@80@2@5000 800@32@ac,27:100:3600 40::120 200:0.008:,CarriesThreeQuarters,25,25:100 60:86 85:71,2:1 4:0.9,100:0.48 1e5:0.22,2.1..3.1,120,70,−40..105,5VA,bolted locked,AEC-Q200; UL 248-14,0.01,no,iec60127timelag,"invented, ""not for use"""
            """");
        Assert.Empty(table.Faults.Select(fault => fault.Message));
        var expected = new Fuse("Reed-20")
        {
            PartNumber = "Reed-20",
            RatedCurrent = 20.Amperes(),
            DcVoltageRating = 80.Volts(),
            InterruptingRatings =
            [
                new() { Current = 10000.Amperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() },
                new() { Current = 1000.Amperes(), Voltage = 150.Volts() },
                new() { Current = 50.Amperes(), Voltage = 250.Volts(), Kind = CurrentKind.Ac },
            ],
            MeltingIntegral = Band.Of(300.AmpereSquaredSeconds(), 320.AmpereSquaredSeconds(), 350.AmpereSquaredSeconds()),
            ClearingIntegrals =
            [
                new() { Value = 900.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds(), Current = 5000.Amperes() },
                new() { Value = 800.AmpereSquaredSeconds(), Voltage = 32.Volts(), Kind = CurrentKind.Ac },
            ],
            Curve = [new(27.Amperes(), 100.Seconds(), 3600.Seconds()), new(40.Amperes(), null, 120.Seconds()), new(200.Amperes(), 0.008.Seconds(), null)],
            RatingBasis = RatingBasis.CarriesThreeQuarters,
            ReferenceAmbient = 25.Celsius(),
            Derating = [new(25.Celsius(), 1.00), new(60.Celsius(), 0.86), new(85.Celsius(), 0.71)],
            AltitudeDerating = [new(Length.FromKilometers(2), 1), new(Length.FromKilometers(4), 0.9)],
            PulseLife = [new(100, 0.48), new(100000, 0.22)],
            ColdResistance = Band.Of(2.1.Milliohms(), 3.1.Milliohms()),
            VoltageDrop = 120.Millivolts(),
            TemperatureRise = TemperatureDelta.FromKelvins(70),
            OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
            Flammability = Flammability.FiveVA,
            Joint = Joint.BoltedLocked,
            Qualifications = ["AEC-Q200", "UL 248-14"],
            Inductance = 0.01.Microhenries(),
            ShortCircuitProof = false,
            Characteristic = Characteristic.Iec60127TimeLag,
            Citation = "invented, \"not for use\"",
        };
        Assert.Equal(Said.By(expected), Said.By(table.Make(table.Rows[0])));
    }

    [Fact]
    public void Clamps_and_electronic_fuses_state_what_has_parts()
    {
        var clamps = PartsTableText.Read("TransientSuppressor,ClampingVoltage [V@A@µs@us],PeakPulsePower [W@ms]\nOsier,103@14.6@10@1000,1500@1\n");
        Assert.Empty(clamps.Faults.Select(fault => fault.Message));
        var clamp = new TransientSuppressor("Osier")
        {
            PartNumber = "Osier",
            ClampingVoltage = new() { Voltage = 103.Volts(), Current = 14.6.Amperes(), Front = 10.Microseconds(), HalfValue = 1000.Microseconds() },
            PeakPulsePower = new() { Power = 1500.Watts(), Width = 1.Milliseconds() },
        };
        Assert.Equal(Said.By(clamp), Said.By(clamps.Make(clamps.Rows[0])));

        var switches = PartsTableText.Read("ElectronicFuse,SafeOperatingArea.Points [V:A:ms],SafeOperatingArea.Guaranteed\nHeron,12:25:1 48:4:10:85,yes\n");
        Assert.Empty(switches.Faults.Select(fault => fault.Message));
        var heron = new ElectronicFuse("Heron")
        {
            PartNumber = "Heron",
            SafeOperatingArea = new() { Points = [new(12.Volts(), 25.Amperes(), 1.Milliseconds()), new(48.Volts(), 4.Amperes(), 10.Milliseconds(), 85.Celsius())], Guaranteed = true },
        };
        Assert.Equal(Said.By(heron), Said.By(switches.Make(switches.Rows[0])));
    }

    [Fact]
    public void Alternates_are_parts_of_the_table_without_alternates_of_their_own()
    {
        var table = PartsTableText.Read("Fuse,RatedCurrent [A],Alternates\nA,1,B; C\nB,2,A\nC,3,\n");
        Assert.Empty(table.Faults.Select(fault => fault.Message));
        var first = (Fuse)table.Make(table.Rows[0]);
        Assert.Equal(["B", "C"], first.Alternates.Select(part => part.PartNumber));
        Assert.Equal([2.0, 3.0], first.Alternates.Select(part => ((Fuse)part).RatedCurrent!.Value.Amperes));
        Assert.All(first.Alternates, part => Assert.Empty(part.Alternates));
    }

    [Fact]
    public void None_states_that_there_is_no_qualification_and_an_empty_cell_states_nothing()
    {
        var table = PartsTableText.Read("Fuse,Qualifications\nA,none\nB,\n");
        Assert.Equal(ImmutableArray<string>.Empty, ((Fuse)table.Make(table.Rows[0])).Qualifications);
        Assert.Null(((Fuse)table.Make(table.Rows[1])).Qualifications);
    }

    /// <summary>Symbols against UnitsNet's own, which reads them; I²t, which it lacks, by hand.</summary>
    [Fact]
    public void Units_mean_what_the_units_library_says_they_mean()
    {
        foreach (var quantity in TableQuantity.All.Where(quantity => quantity.Type != typeof(JouleIntegral)))
        {
            foreach (var unit in quantity.Units)
            {
                var made = (IQuantity)unit.Make(1.5);
                if (quantity.Type == typeof(Ratio) && unit.Symbol == "1")
                {
                    Assert.Equal(1.5, ((Ratio)made).DecimalFractions);
                    continue;
                }

                var symbol = quantity.Type == typeof(TemperatureDelta) ? "∆" + unit.Symbol : quantity.Type == typeof(Duration) && unit.Symbol == "min" ? "m" : unit.Symbol;
                Assert.True(
                    UnitsNetSetup.Default.UnitParser.TryParse(symbol, made.QuantityInfo.UnitType, System.Globalization.CultureInfo.InvariantCulture, out var parsed) && parsed!.Equals(made.Unit),
                    $"{quantity.Kind} {unit.Symbol}: {made.Unit}, {parsed}");
                Assert.Equal(1.5, (double)made.Value);
            }
        }

        Assert.Equal(1.5, ((JouleIntegral)TableQuantity.Find(typeof(JouleIntegral))!.Units[0].Make(1.5)).AmpereSquaredSeconds);
    }

    [Theory]
    [InlineData("mOhm", "mΩ")]
    [InlineData("m\u2126", "mΩ")]
    [InlineData("MOhm", "MΩ")]
    [InlineData("uH", "µH")]
    [InlineData("\u03BCs", "µs")]
    [InlineData("A2s", "A²s")]
    [InlineData("A^2s", "A²s")]
    [InlineData("A²·s", "A²s")]
    [InlineData("mm2", "mm²")]
    [InlineData("degC", "°C")]
    [InlineData(" mA ", "mA")]
    [InlineData("m", "m")]
    [InlineData("min", "min")]
    public void Plain_spellings_are_the_usual_ones(string written, string symbol) => Assert.Equal(symbol, TableUnit.Spell(written));

    private static string Sample(TableShape shape) => shape switch
    {
        TableNames => "X; Y",
        TablePartNumbers => "Q",
        TableScalar scalar => Sample(scalar),
        _ => string.Join(shape.UnitSeparator, shape.Scalars.Select(Sample)),
    };

    private static string Sample(TableScalar scalar) => scalar.Kind switch
    {
        "text" => "words",
        "yes or no" => "yes",
        _ when scalar.Kind.Contains('|') => scalar.Kind.Split('|')[^1],
        _ => "3",
    };
}
