using System.Collections.Immutable;
using System.Globalization;

namespace RailRules.Review.Drawings;

/// <summary>
/// The supply tree: from the sources at the top down to the loads, the figures of each device in columns beside it. Drawn twice, wide and narrow; the style sheet shows the one that fits.
/// </summary>
internal static class SupplyTree
{
    private const double Wide = 760, Narrow = 344;

    /// <summary>Height of one picture: less than a page of paper, so that none is cut.</summary>
    private const double Sheet = 900;

    private const double Font = 12.5, Line = 15.5;

    private static readonly (string Title, double Right)[] Columns = [("Voltage", 388), ("Current", 456), ("Smallest fault", 556), ("Largest fault", 644), ("Tightest margin", 752)];

    internal static Drawing? Of(BoardReview review)
    {
        var roots = TreeFolding.Fold(new TreeBuilder(review).Roots());
        if (roots.IsEmpty)
        {
            return null;
        }

        const string title = "Supply tree";
        var description = Describe(review, roots);
        var svg = string.Concat(Sheets(new Layout(roots, narrow: false).Rows, "tree-w", "tree wide", title, description))
            + string.Concat(Sheets(new Layout(roots, narrow: true).Rows, "tree-n", "tree narrow", title, description));
        return new Drawing
        {
            Id = "tree",
            Title = title,
            Description = description,
            Svg = svg,
            Table = TableOf(roots),
            Captions =
            [
                "Current: the largest steady current, r.m.s. Smallest fault: at the far end of what the device protects, at the lowest voltage, hot. Largest fault: just behind the device, at the highest voltage, cold. Margin: capacity over demand, of the check that is worst there.",
            ],
        };
    }

    private static string Describe(BoardReview review, ImmutableArray<TreeBranch> roots)
    {
        var items = All(roots).ToList();
        var devices = items.Where(one => IsDevice(one.Item)).Sum(one => one.Count);
        var worst = items.Where(one => one.Item.Tightest is not null).Select(one => one.Item).OrderBy(item => item.Tightest!.Outcome).ThenBy(item => item.Tightest!.Check.Margin ?? double.PositiveInfinity).FirstOrDefault();
        var sources = review.Network.Sources.Length;
        return $"{Shown.Count(sources, "source feeds", "sources feed")} {Shown.Count(review.Network.Rails.Length, "rail")} through {Shown.Count(devices, "protective device")}"
            + (worst is null ? "." : $"; the tightest margin is at {worst.Name}{(worst.Rail.Length > 0 && worst.Rail != worst.Name ? $" on {worst.Rail}" : "")}: {worst.MarginText}, {worst.MarginNote}.")
            + " The table behind it has every figure.";
    }

    private static bool IsDevice(TreeItem item) => item.Symbol is TreeSymbol.Fuse or TreeSymbol.Breaker or TreeSymbol.Resettable or TreeSymbol.Electronic;

    private static IEnumerable<(TreeItem Item, int Count)> All(IEnumerable<TreeBranch> branches) =>
        branches.SelectMany(branch => branch.Items.Select(item => (item, Math.Max(1, item.Members.Length))).Concat(All(branch.Below)));

    private static DrawingTable TableOf(ImmutableArray<TreeBranch> roots) => new(
        "What the supply tree shows: each source, device and load with its figures",
        [
            new("Thing"), new("Rail"), new("Kind"), new("Voltage", true), new("Peak", true), new("Current", true), new("Smallest fault", true), new("Largest fault", true), new("Tightest margin", true), new("Of rule"),
        ],
        [
            .. All(roots).Where(one => one.Item.HasFigures || one.Item.Symbol is TreeSymbol.Load or TreeSymbol.Reference).Select(one => (ImmutableArray<DrawingCell>)
            [
                NameOf(one.Item, 120), Shown.Short(one.Item.Rail, 120), one.Item.Note, one.Item.VoltageText, one.Item.PeakText, one.Item.CurrentText, one.Item.SmallestText, one.Item.LargestText,
                new DrawingCell(one.Item.MarginText, one.Item.Tightest?.Check.Margin is { } margin && double.IsFinite(margin) ? margin : null), one.Item.Tightest?.Check.Rule ?? "",
            ]),
        ]);

    private static string NameOf(TreeItem item, int length) => item.Members.Length > 1
        ? string.Create(CultureInfo.InvariantCulture, $"{item.Members.Length} × {Shown.Short(TreeItem.Listed([.. item.Members.Distinct()]), length)}")
        : Shown.Short(item.Name, length);

    /// <summary>The rows on sheets that fit a page; lines go on from one to the next.</summary>
    private static IEnumerable<string> Sheets(List<Row> rows, string id, string css, string title, string description)
    {
        var isNarrow = css.EndsWith("narrow", StringComparison.Ordinal);
        var (width, head) = isNarrow ? (Narrow, 0.0) : (Wide, 34.0);
        for (int from = 0, number = 1; from < rows.Count; number++)
        {
            var (end, height) = (from, 0.0);
            while (end < rows.Count && (height + rows[end].Height <= Sheet || end == from))
            {
                height += rows[end++].Height;
            }

            // A sheet ends before a rail where one begins in its last third.
            var cut = end;
            var kept = height;
            while (end < rows.Count && cut > from + 1 && rows[cut].Item.Symbol != TreeSymbol.Rail && kept > height * 2 / 3)
            {
                kept -= rows[--cut].Height;
            }

            if (end < rows.Count && rows[cut].Item.Symbol == TreeSymbol.Rail)
            {
                (end, height) = (cut, kept);
            }

            var svg = new SvgWriter();
            svg.Begin(string.Create(CultureInfo.InvariantCulture, $"{id}{number}"), css, width, height + head + (end == rows.Count ? 6 : 0), number == 1 ? title : string.Create(CultureInfo.InvariantCulture, $"{title}, part {number}"), description);
            if (!isNarrow)
            {
                foreach (var (column, right) in Columns)
                {
                    svg.Text(right, 14, column, "soft", "end");
                }

                svg.Line(8, 22, Wide - 8, 22, "rule");
            }

            var y = head;
            foreach (var row in rows.Skip(from).Take(end - from))
            {
                row.Draw(svg, y, isNarrow);
                y += row.Height;
            }

            svg.End();
            yield return svg.ToString();
            from = end;
        }
    }

    /// <summary>Puts the branches into rows.</summary>
    private sealed class Layout
    {
        private readonly bool narrow;
        private readonly double step;

        internal Layout(ImmutableArray<TreeBranch> roots, bool narrow)
        {
            this.narrow = narrow;
            var levels = roots.Max(Levels);
            step = Math.Min(narrow ? 14 : 18, (narrow ? 90.0 : 126.0) / Math.Max(1, levels));
            foreach (var root in roots)
            {
                Add(root, 0, null, []);
            }
        }

        internal List<Row> Rows { get; } = [];

        /// <summary>How far branches step to the right: a branch that is alone goes straight on.</summary>
        private static int Levels(TreeBranch branch) => branch.Below.IsEmpty ? 0 : branch.Below.Max(Levels) + (GoesStraight(branch) ? 0 : 1);

        private static bool GoesStraight(TreeBranch branch) => branch.Below is [{ Count: 1 }];

        private void Add(TreeBranch branch, int level, (double X, bool GoesOn)? stub, ImmutableArray<double> passing)
        {
            var x = 18 + (level * step);
            for (var i = 0; i < branch.Items.Length; i++)
            {
                var first = i == 0;
                Rows.Add(new Row(branch.Items[i], x, narrow)
                {
                    Stub = first ? stub : null,
                    IsFolded = first && branch.Count > 1,
                    Passing = !first && stub is { GoesOn: true } open ? passing.Add(open.X) : passing,
                    HasAbove = !first || (stub is null && IsBelow),
                    HasBelow = i < branch.Items.Length - 1 || !branch.Below.IsEmpty,
                });
                IsBelow = true;
            }

            var through = stub is { GoesOn: true } parent ? passing.Add(parent.X) : passing;
            var straight = GoesStraight(branch);
            for (var i = 0; i < branch.Below.Length; i++)
            {
                IsBelow = straight;
                Add(branch.Below[i], straight ? level : level + 1, straight ? null : (x, i < branch.Below.Length - 1), through);
            }

            IsBelow = false;
        }

        /// <summary>Whether the next branch without a stub hangs on the trunk above it.</summary>
        private bool IsBelow { get; set; }
    }

    /// <summary>One row: an item, the lines that pass it, its figures.</summary>
    private sealed class Row
    {
        private const double Half = 7;

        private readonly List<(string Text, string Css)> stack = [];

        internal Row(TreeItem item, double x, bool narrow)
        {
            Item = item;
            X = x;
            if (narrow)
            {
                Stack();
                Height = Math.Max(1, 1 + stack.Count) * Line + 8;
            }
            else
            {
                Height = item.Symbol switch
                {
                    TreeSymbol.Rail => item.HasFigures || item.Note.Length > 0 ? 40 : 28,
                    TreeSymbol.Conductors or TreeSymbol.Load or TreeSymbol.Clamp or TreeSymbol.Capacitor => item.Tightest is not null ? 38 : 26,
                    TreeSymbol.Reference => item.Note.Length > 0 ? 38 : 26,
                    _ => 42,
                };
            }
        }

        internal TreeItem Item { get; }

        internal double X { get; }

        internal double Height { get; }

        internal (double X, bool GoesOn)? Stub { get; init; }

        internal ImmutableArray<double> Passing { get; init; } = [];

        internal bool HasAbove { get; init; }

        /// <summary>Whether it begins a branch that stands for several: a stroke across the line.</summary>
        internal bool IsFolded { get; init; }

        internal bool HasBelow { get; init; }

        private double Middle => 15;

        internal void Draw(SvgWriter svg, double top, bool narrow)
        {
            svg.Group("class=\"row\"");
            var middle = top + Middle;
            foreach (var x in Passing)
            {
                svg.Line(x, top, x, top + Height, "wire");
            }

            if (Stub is { } stub)
            {
                svg.Path($"M{SvgWriter.Number(stub.X)} {SvgWriter.Number(top)}V{SvgWriter.Number(middle - 5)}q0 5 5 5H{SvgWriter.Number(X)}", "wire");
                if (IsFolded)
                {
                    svg.Path($"M{SvgWriter.Number((stub.X + X) / 2)} {SvgWriter.Number(middle)}m-3 5l6 -10", "mark");
                }

                if (stub.GoesOn)
                {
                    svg.Line(stub.X, middle - 5, stub.X, top + Height, "wire");
                }
            }
            else if (HasAbove)
            {
                svg.Line(X, top, X, middle, "wire");
            }

            if (HasBelow)
            {
                svg.Line(X, middle, X, top + Height, "wire");
            }

            TreeSymbols.Draw(svg, Item.Symbol, X, middle);
            var left = X + (Item.Symbol is TreeSymbol.Conductors or TreeSymbol.Rail ? 11 : 15);
            var room = (narrow ? Narrow - 4 : 306) - left;
            var css = Item.Symbol switch { TreeSymbol.Rail => "rail", TreeSymbol.Conductors or TreeSymbol.Reference => "soft", TreeSymbol.Load or TreeSymbol.Clamp or TreeSymbol.Capacitor => "", _ => "name" };
            var bold = css is "rail" or "name";
            var name = NameOf(Item, 300);
            var oneLine = !narrow && Item.Symbol is TreeSymbol.Load or TreeSymbol.Clamp or TreeSymbol.Capacitor && Item.Note.Length > 0;
            var shown = oneLine ? $"{name}: {Item.Note}" : name;
            svg.Text(left, middle + 4, TextWidth.Fit(shown, room, Font, bold), css, whole: shown);
            if (narrow)
            {
                var y = middle + 4;
                foreach (var (text, style) in stack)
                {
                    y += Line;
                    svg.Text(left, y, TextWidth.Fit(text, room, Font, style.Contains("margin", StringComparison.Ordinal)), style, whole: text);
                }
            }
            else
            {
                if (!oneLine && Item.Symbol != TreeSymbol.Conductors)
                {
                    svg.Text(left, middle + 4 + Line, TextWidth.Fit(Item.Note, room, Font), "soft", whole: Item.Note);
                }

                DrawColumns(svg, middle + 4);
            }

            svg.EndGroup();
        }

        private void DrawColumns(SvgWriter svg, double y)
        {
            (string First, string Second, string Css)[] cells =
            [
                (Item.VoltageText, Item.PeakText, "v"), (Item.CurrentText, "", "a"), (Item.SmallestText, "", "fs"), (Item.LargestText, "", "fl"),
                (Item.MarginText, Item.MarginNote, Item.Tightest is { } check ? "margin " + check.Outcome.ToString().ToLowerInvariant() : "margin"),
            ];
            for (var i = 0; i < cells.Length; i++)
            {
                var (first, second, css) = cells[i];
                var room = Columns[i].Right - (i == 0 ? 308 : Columns[i - 1].Right + 6);
                if (TextWidth.Of(first, Font) > room && first.IndexOf(" to ", StringComparison.Ordinal) is > 0 and var cut)
                {
                    // A range that is too wide stands on two lines, as one text.
                    svg.Raw($"<text class=\"{css}\" text-anchor=\"end\" x=\"{SvgWriter.Number(Columns[i].Right)}\" y=\"{SvgWriter.Number(y)}\">{SvgWriter.Escaped(first[..(cut + 3)])} <tspan x=\"{SvgWriter.Number(Columns[i].Right)}\" dy=\"{SvgWriter.Number(Line)}\">{SvgWriter.Escaped(first[(cut + 4)..])}</tspan></text>");
                    continue;
                }

                svg.Text(Columns[i].Right, y, first, css, "end");
                svg.Text(Columns[i].Right, y + Line, second, "soft", "end");
            }
        }

        /// <summary>The figures below each other, each with its name.</summary>
        private void Stack()
        {
            if (Item.Note.Length > 0 && Item.Symbol != TreeSymbol.Conductors)
            {
                stack.Add((Item.Note, "soft"));
            }

            Add(Item.VoltageText, "", "v", Item.PeakText.Length > 0 ? ", " + Item.PeakText : "");
            Add(Item.CurrentText, "current ", "a");
            Add(Item.SmallestText, "smallest fault ", "fs");
            Add(Item.LargestText, "largest fault ", "fl");
            if (Item.Tightest is { } check)
            {
                stack.Add(($"{Item.MarginText}  {Item.MarginNote}", "margin " + check.Outcome.ToString().ToLowerInvariant()));
            }

            void Add(string text, string before, string css, string after = "")
            {
                if (text.Length > 0)
                {
                    stack.Add((before + text + after, css));
                }
            }
        }
    }
}
