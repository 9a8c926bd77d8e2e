using System.Collections.Immutable;

namespace RailRules.Review.Drawings;

/// <summary>Folds repeated branches of a supply tree: those that look alike; of many, those made alike, their figures as ranges; of very many, those with the widest margins.</summary>
internal static class TreeFolding
{
    /// <summary>Rows up to which a tree is drawn as it is.</summary>
    internal const int ManyRows = 120;

    /// <summary>Rows that a drawing has at most.</summary>
    internal const int MostRows = 260;

    internal static ImmutableArray<TreeBranch> Fold(ImmutableArray<TreeBranch> roots)
    {
        var folded = Fold(roots, branch => branch.Look);
        if (Rows(folded) > ManyRows)
        {
            folded = Fold(folded, branch => branch.Kind);
        }

        for (var share = MostRows / 2; Rows(folded) > MostRows && share >= 8; share /= 2)
        {
            folded = Cut([.. folded.Select(root => Cut(root, share))], share);
        }

        for (var depth = 64; Rows(folded) > MostRows && depth >= 2; depth /= 2)
        {
            folded = [.. folded.Select(root => Shorten(root, depth))];
        }

        return folded;
    }

    private static int Rows(ImmutableArray<TreeBranch> branches) => branches.Sum(branch => branch.Rows);

    private static ImmutableArray<TreeBranch> Fold(ImmutableArray<TreeBranch> branches, Func<TreeBranch, string> by) =>
        [.. branches.Select(branch => branch.Over(Fold(branch.Below, by))).GroupBy(by, StringComparer.Ordinal).Select(group => Merge([.. group]))];

    private static TreeBranch Merge(ImmutableArray<TreeBranch> alike) => alike.Length == 1
        ? alike[0]
        : new TreeBranch(
            [.. Enumerable.Range(0, alike[0].Items.Length).Select(i => Merge([.. alike.Select(branch => branch.Items[i])]))],
            [.. Enumerable.Range(0, alike[0].Below.Length).Select(i => Merge([.. alike.Select(branch => branch.Below[i])]) with { Count = alike[0].Below[i].Count })])
        {
            Count = alike.Sum(branch => branch.Count),
        };

    private static TreeItem Merge(ImmutableArray<TreeItem> alike)
    {
        var first = alike[0];
        var same = alike.All(item => item.Look == first.Look);
        return first with
        {
            Members = [.. alike.SelectMany(item => item.Members.IsEmpty ? [item.Name] : item.Members)],
            Voltage = alike.Select(item => item.Voltage).Aggregate((a, b) => a.With(b)),
            Peak = alike.Max(item => item.Peak),
            Current = Together(item => item.Current),
            Demand = alike.Select(item => item.Demand).Aggregate((a, b) => a.With(b)),
            SmallestFault = Together(item => item.SmallestFault),
            LargestFault = Together(item => item.LargestFault),
            Tightest = alike.Select(item => item.Tightest).OfType<ReviewedCheck>().OrderBy(check => check.Outcome).ThenBy(check => check.Check.Margin ?? double.PositiveInfinity).FirstOrDefault(),
            IsRange = !same || first.IsRange,
        };

        Bounds Together(Func<TreeItem, Bounds> of) => same ? of(first) : alike.Select(of).Aggregate((a, b) => a.With(b));
    }

    /// <summary>Leaves the branches with the tightest margins, and says how many others there are.</summary>
    private static TreeBranch Cut(TreeBranch branch, int most) => branch.Over(Cut([.. branch.Below.Select(below => Cut(below, most))], most));

    private static ImmutableArray<TreeBranch> Cut(ImmutableArray<TreeBranch> branches, int most)
    {
        if (branches.Length <= most)
        {
            return branches;
        }

        var kept = branches.Where(branch => !IsRest(branch)).OrderBy(branch => Worst(branch).Outcome).ThenBy(branch => Worst(branch).Margin).Take(most).ToHashSet(ReferenceEqualityComparer.Instance);
        var left = branches.Where(branch => !kept.Contains(branch)).Sum(branch => branch.Count);
        var rest = new TreeItem { Symbol = TreeSymbol.Reference, Name = $"and {Shown.Count(left, "more branch", "more branches")}", Sort = "with wider margins: see the table of rails" };
        return [.. branches.Where(kept.Contains), new TreeBranch([rest], []) { Count = left }];
    }

    private static TreeBranch Shorten(TreeBranch branch, int depth) => branch.Below.IsEmpty ? branch
        : branch.Over(depth > 0 ? [.. branch.Below.Select(below => Shorten(below, depth - 1))] : [new TreeBranch([GoesOn], [])]);

    /// <summary>Stands for what lies further below.</summary>
    internal static TreeItem GoesOn { get; } = new() { Symbol = TreeSymbol.Reference, Name = "goes on", Sort = "see the table of rails" };

    private static bool IsRest(TreeBranch branch) => branch is { Items: [{ Symbol: TreeSymbol.Reference }], Below.IsEmpty: true };

    private static (Outcome Outcome, double Margin) Worst(TreeBranch branch) =>
        branch.Items.Select(item => item.Tightest).OfType<ReviewedCheck>().Select(check => (check.Outcome, Margin: check.Check.Margin ?? double.PositiveInfinity))
            .Concat(branch.Below.Select(Worst)).DefaultIfEmpty((Outcome.Holds, double.PositiveInfinity)).Min();
}
