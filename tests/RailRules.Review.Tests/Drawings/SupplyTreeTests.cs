using System.Globalization;
using AngleSharp.Dom;

namespace RailRules.Review.Tests.Drawings;

/// <summary>The supply tree: every figure that it shows is that of the network; as many devices as there are; few rows however many rails.</summary>
[Collection(SampleCollection.Name)]
public sealed class SupplyTreeTests(SampleReviews samples)
{
    [Fact]
    public async Task Figures_at_each_device_are_those_of_the_network()
    {
        foreach (var (_, review) in samples.All)
        {
            var page = await PageTests.ParseAsync(review);
            var rows = Rows(page, "wide");
            var devices = Devices(review);
            Assert.Equal(devices.Count, rows.Where(row => row.Device is not null).Sum(row => row.Count));
            foreach (var row in rows.Where(row => row.Device is not null))
            {
                if (row.Count > 1 && !devices.Any(place => Expected(review, place).SequenceEqual(row.Cells)))
                {
                    // Branches made alike are folded to ranges: both ends are figures of a device.
                    var figures = devices.Select(place => Expected(review, place).ToList()).ToList();
                    Assert.All(row.Cells.Select((cell, i) => (Cell: cell, Index: i)), one => Assert.All(one.Cell.Split(" to "), end => Assert.Contains(figures, figure => figure[one.Index].Contains(end.TrimStart('≤', '≥', ' '), StringComparison.Ordinal))));
                    continue;
                }

                // The same designator may stand in two places of a faulty board.
                Assert.Contains(devices.Where(place => (place.Part.Designator ?? place.Label) == row.Device), place => Expected(review, place).SequenceEqual(row.Cells));
            }

            Assert.Equal(rows.Select(row => row.Device), Rows(page, "narrow").Select(row => row.Device));
        }
    }

    [Fact]
    public async Task Table_behind_it_has_the_figures_of_the_picture()
    {
        foreach (var (_, review) in samples.All)
        {
            var page = await PageTests.ParseAsync(review);
            var cells = page.QuerySelectorAll("#tree tbody tr").Select(row => string.Join('|', row.QuerySelectorAll("td.n").Where((_, i) => i != 1).Take(4).Select(cell => cell.TextContent))).ToList();
            Assert.All(Rows(page, "wide").Where(row => row.Device is not null), row => Assert.Contains(string.Join('|', row.Cells), cells));
        }
    }

    [Fact]
    public async Task Alike_branches_are_folded()
    {
        var page = await PageTests.ParseAsync(samples.Of("Lockhouse.LockhouseShelf").Review);
        var row = Assert.Single(Rows(page, "wide"), row => row.Device == "F11");
        Assert.Equal(8, row.Count);
        Assert.Equal("8 × F11, F12 … F18", row.Name);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(3, false)]
    [InlineData(1000, true)]
    [InlineData(1000, false)]
    public async Task Few_rows_tell_of_many_rails(int count, bool alike)
    {
        var review = DrawnBoards.Shelf(count, alike);
        var page = await PageTests.ParseAsync(review);
        Assert.InRange(page.QuerySelector("#tree")!.OuterHtml.Length, 1, 400_000);
        var rows = Rows(page, "wide");
        Assert.InRange(rows.Count, 4, 260);
        Assert.Equal(count + 1, rows.Where(row => row.Device is not null).Sum(row => row.Count));
    }

    [Fact]
    public async Task Folded_branches_that_differ_show_their_range()
    {
        var review = DrawnBoards.Shelf(1000, alike: false);
        var rows = Rows(await PageTests.ParseAsync(review), "wide");
        var folded = rows.Where(row => row.Count > 1 && row.Device is not null).ToList();
        var currents = Devices(review).Where(place => place.Label == "Reed25").Select(place => review.Network.CurrentOf(place).High).ToList();
        Assert.Equal(1000, folded.Sum(row => row.Count));
        Assert.Single(folded, row => row.Cells[1].StartsWith(Figures.Text(currents.Min(), "A") + " to ", StringComparison.Ordinal));
        Assert.Single(folded, row => row.Cells[1].EndsWith(" to " + Figures.Text(currents.Max(), "A"), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Odd_boards_are_drawn()
    {
        // Two that feed each other, one without a source, one with two feeds, and a long chain.
        var lost = new Rail { Name = "Lost", Path = [DrawnBoards.Fuse(5, "F9")], Return = Return.Mirrored };
        var other = new Supply { Name = "Other", Voltage = 48.Volts() };
        var both = new Rail
        {
            Name = "Both",
            Feeds = [new() { From = DrawnBoards.Plant, Path = [DrawnBoards.Fuse(10, "F1")], Return = Return.Mirrored }, new() { From = other, Path = [DrawnBoards.Fuse(10, "F2")], Return = Return.Mirrored }],
            Loads = [new() { Power = 100.Watts(), MinVoltage = 38.Volts() }],
        };
        var chain = new List<Rail> { new() { Name = "Link 0", From = DrawnBoards.Plant, Path = [DrawnBoards.Fuse(20, "F3")], Return = Return.Mirrored } };
        for (var i = 1; i < 400; i++)
        {
            chain.Add(new() { Name = $"Link {i}", From = chain[^1], Loads = [new() { Current = 1.Milliamperes() }] });
        }

        var page = await PageTests.ParseAsync(DrawnBoards.Of([lost, both, .. chain]));
        var names = Rows(page, "wide").Select(row => row.Name).ToList();
        Assert.Contains("no source stated", names);
        Assert.Equal(1, names.Count(name => name == "joins rail 'Both'"));
        Assert.Equal(2, names.Count(name => name is "F1" or "F2"));
        Assert.Contains("goes on", names);
    }

    internal static List<Network.PartPlace> Devices(BoardReview review) =>
        [.. review.Network.Rails.SelectMany(review.Network.Parts).Where(place => place.Part is Fuse or CircuitBreaker or ElectronicFuse or ResettableFuse)];

    private static IEnumerable<string> Expected(BoardReview review, Network.PartPlace place)
    {
        var network = review.Network;
        var voltages = network.VoltagesOf(place.Rail);
        yield return !voltages.Low.IsKnown || !voltages.High.IsKnown ? "" : voltages.Low.Value == voltages.High.Value ? Figures.Text(voltages.High.Value, "V") : $"{Figures.Text(voltages.Low.Value, "V")} to {Figures.Text(voltages.High.Value, "V")}";
        var flow = network.CurrentOf(place);
        yield return flow.Reason == Network.FlowReason.Collapse ? "no operating point" : flow.Reason == Network.FlowReason.Cycle || double.IsInfinity(flow.High) ? "not known"
            : flow.IsExact ? Figures.Text(flow.High, "A") : "≤ " + Figures.Text(flow.High, "A");
        if (place.InReturn)
        {
            yield return "";
            yield return "";
            yield break;
        }

        var ends = Rules.Protection.FarEnds(network, place).Select(end => network.SmallestFault(end.Rail, end.Supplier, end.Behind, place).Current).ToList();
        var (low, high) = (ends.Min(end => end.Low), ends.Min(end => end.High));
        yield return low == high ? Figures.Text(low, "A") : low > 0 ? "≥ " + Figures.Text(low, "A") : "not known";
        var most = network.LargestFault(place, place.Place.Index!.Value, reverse: false, least: false).Peak;
        var least = network.LargestFault(place, place.Place.Index!.Value, reverse: false, least: true).Peak;
        yield return double.IsInfinity(most) ? "no bound" : least == most ? Figures.Text(most, "A") : "≤ " + Figures.Text(most, "A");
    }

    private static List<Row> Rows(IDocument page, string css) => [.. page.QuerySelectorAll($"svg.tree.{css} g.row").Select(row => new Row(row))];

    private sealed class Row
    {
        internal Row(IElement row)
        {
            var texts = row.QuerySelectorAll("text");
            var first = texts[0];
            Name = first.QuerySelector("title")?.TextContent ?? DrawnBoards.Words(first);
            var cross = Name.IndexOf(" × ", StringComparison.Ordinal);
            Count = cross > 0 && int.TryParse(Name[..cross], NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 1;
            var single = cross > 0 ? Name[(cross + 3)..].Split([", ", " and ", " … "], StringSplitOptions.None)[0] : Name;
            Device = first.ClassName == "name" && row.QuerySelector(".fl, .fs, .a") is not null && row.QuerySelector("circle") is null ? single : null;
            Cells = [.. new[] { ".v", ".a", ".fs", ".fl" }.Select(css => row.QuerySelector(css)?.TextContent ?? "")];
        }

        internal string Name { get; }

        internal int Count { get; }

        internal string? Device { get; }

        internal string[] Cells { get; }
    }
}
