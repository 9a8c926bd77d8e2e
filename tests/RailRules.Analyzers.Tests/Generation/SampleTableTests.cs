using System.Globalization;
using RailRules.Rules;
using RailRules.Tables;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>The tables of the samples: without faults, and their invented parts behave as real families do.</summary>
public sealed class SampleTableTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Samples", "PartsLibrary");

    public static TheoryData<string> Tables() => [.. Directory.GetFiles(Folder, "*.parts.csv").Select(file => Path.GetFileName(file)!)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void A_table_says_that_it_is_invented_and_has_no_fault(string file)
    {
        Assert.StartsWith("Invented", file, StringComparison.Ordinal);
        var table = Read(file);
        Assert.Empty(table.Faults.Select(fault => fault.Message));
        Assert.NotEmpty(table.Rows);
        foreach (var part in table.Rows.Select(table.Make))
        {
            Assert.Equal("invented, not for use", part.GetType().GetProperty("Citation")!.GetValue(part));
            Assert.Empty(ContradictoryDatum.Validate(part).Select(check => check.Message));
        }
    }

    [Fact]
    public void There_are_enough_parts_of_each_kind()
    {
        var parts = All<object>().ToList();
        Assert.True(parts.Count >= 120, parts.Count.ToString(CultureInfo.InvariantCulture));
        Type[] kinds = [typeof(Fuse), typeof(CircuitBreaker), typeof(ResettableFuse), typeof(ElectronicFuse), typeof(TransientSuppressor), typeof(Connector)];
        Assert.All(kinds, kind => Assert.True(parts.Count(part => part.GetType() == kind) >= 10, kind.Name));
    }

    /// <summary>R10 series of ISO 3 as IEC 60127 uses it; ampere ratings of NFPA 70, 240.6(A); IEC 60269-1's series of R10 rounded (from memory).</summary>
    [Theory]
    [InlineData("Tarn-T", "1 1.25 1.6 2 2.5 3.15 4 5 6.3 8", true)]
    [InlineData("Beck-", "15 20 25 30 35 40 45 50 60 70 80 90 100 110 125 150 175 200 225 250 300 350 400", false)]
    [InlineData("Ghyll-", "2 4 6 8 10 12 16 20 25 32 40 50 63 80 100 125 160 200 250", false)]
    [InlineData("Fell-", "5 10 15 20 25 30 35 40 45 50 60 70 80 90 100 110 125 150", false)]
    public void Ratings_are_of_the_standard_series(string family, string series, bool decades)
    {
        var allowed = series.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToList();
        var ratings = All<Element>().Where(part => part.PartNumber!.StartsWith(family, StringComparison.Ordinal)).Select(Rating).ToList();
        Assert.True(ratings.Count > 10);
        Assert.All(ratings, rating => Assert.Contains(allowed, value => (decades ? new[] { 0.1, 1, 10, 100 } : [1]).Any(decade => Math.Abs(value * decade - rating) < 0.011 * rating)));
        Assert.Equal(ratings.Order(), ratings);
    }

    /// <summary>Within a family the melting I²t grows about with the square of the rating, resistance falls, and the curve at ten times the rating agrees with the melting I²t (Joule integral of a constant current).</summary>
    [Fact]
    public void Fuses_behave_as_families_do()
    {
        foreach (var family in All<Fuse>().GroupBy(fuse => fuse.PartNumber!.Split('-')[0]))
        {
            Fuse? before = null;
            foreach (var fuse in family)
            {
                var rated = fuse.RatedCurrent!.Value.Amperes;
                var melting = fuse.MeltingIntegral!.Value.Typical!.Value.AmpereSquaredSeconds;
                Assert.InRange(melting / (rated * rated), 0.3, 3);
                Assert.All(fuse.ClearingIntegrals, clearing => Assert.True(clearing.Value!.Value.AmpereSquaredSeconds > melting));
                Assert.Equal(fuse.DcVoltageRating!.Value.Volts, fuse.InterruptingRatings.Where(rating => rating.Kind == CurrentKind.Dc).Max(rating => rating.Voltage!.Value.Volts));
                var last = fuse.Curve[^1];
                Assert.InRange(last.MinimumMelting!.Value.Seconds * Math.Pow(last.Current.Amperes, 2) / melting, 0.5, 1);
                Assert.InRange(fuse.VoltageDrop!.Value.Typical!.Value.Volts / rated / fuse.ColdResistance!.Value.Typical!.Value.Ohms, 1.1, 2); // hot above cold
                if (before is not null)
                {
                    Assert.True(melting > before.MeltingIntegral!.Value.Typical!.Value.AmpereSquaredSeconds);
                    Assert.True(fuse.ColdResistance.Value.Max.Ohms < before.ColdResistance!.Value.Max.Ohms);
                }

                before = fuse;
            }
        }
    }

    /// <summary>UL 248-14 (from memory): 200 % opens within 2 minutes up to 30 A and 4 minutes above; three quarters are carried for ever.</summary>
    [Fact]
    public void Fuses_of_the_style_keep_its_gates() => Assert.All(
        All<Fuse>().Where(fuse => fuse.Characteristic == Characteristic.Ul248Part14),
        fuse =>
        {
            var rated = fuse.RatedCurrent!.Value.Amperes;
            var twice = fuse.Curve.First(point => Math.Abs(point.Current.Amperes / rated - 2) < 0.01);
            Assert.True(twice.MaximumClearing!.Value.Seconds <= (rated <= 30 ? 120 : 240));
            Assert.Equal(RatingBasis.CarriesThreeQuarters, fuse.RatingBasis);
        });

    private static double Rating(Element part) => part switch
    {
        Fuse fuse => fuse.RatedCurrent!.Value.Amperes,
        CircuitBreaker breaker => breaker.RatedCurrent!.Value.Amperes,
        _ => double.NaN,
    };

    private static IEnumerable<T> All<T>() => Directory.GetFiles(Folder, "*.parts.csv").Order(StringComparer.Ordinal).Select(file => Read(Path.GetFileName(file))).SelectMany(table => table.Rows.Select(table.Make)).OfType<T>();

    private static PartsTableText Read(string file) => PartsTableText.Read(File.ReadAllText(Path.Combine(Folder, file)));
}
