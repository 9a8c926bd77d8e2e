using System.Collections.Immutable;

namespace RailRules.Review.Drawings;

/// <summary>What an item of the supply tree is drawn as.</summary>
internal enum TreeSymbol
{
    /// <summary>A supply.</summary>
    Supply,

    /// <summary>A battery.</summary>
    Battery,

    /// <summary>A converter between two rails.</summary>
    Converter,

    /// <summary>Where a rail begins.</summary>
    Rail,

    /// <summary>A fuse.</summary>
    Fuse,

    /// <summary>A circuit breaker.</summary>
    Breaker,

    /// <summary>A resettable fuse.</summary>
    Resettable,

    /// <summary>An electronic fuse.</summary>
    Electronic,

    /// <summary>Conductors, contacts and other parts between devices.</summary>
    Conductors,

    /// <summary>A clamp across the rail.</summary>
    Clamp,

    /// <summary>A capacitor across the rail.</summary>
    Capacitor,

    /// <summary>A load.</summary>
    Load,

    /// <summary>A rail that is drawn elsewhere, or left to the table.</summary>
    Reference,
}

/// <summary>A figure between bounds; both not a number: there is none. Infinite: nothing bounds it.</summary>
internal readonly record struct Bounds(double Low, double High)
{
    internal static Bounds None { get; } = new(double.NaN, double.NaN);

    internal static Bounds Exactly(double value) => new(value, value);

    internal bool IsNone => double.IsNaN(Low);

    internal Bounds With(Bounds other) => IsNone ? other : other.IsNone ? this : new(Math.Min(Low, other.Low), Math.Max(High, other.High));
}

/// <summary>One item of the supply tree with its figures.</summary>
internal sealed record TreeItem
{
    /// <summary>What it is drawn as.</summary>
    public required TreeSymbol Symbol { get; init; }

    /// <summary>What it is called; of folded items the first.</summary>
    public required string Name { get; init; }

    /// <summary>What kind of thing it is, and its rating.</summary>
    public string Sort { get; init; } = "";

    /// <summary>What a load asks for, in <see cref="DemandUnit"/>.</summary>
    public Bounds Demand { get; init; } = Bounds.None;

    /// <summary>The unit of <see cref="Demand"/>.</summary>
    public string DemandUnit { get; init; } = "";

    internal string Note => Demand.IsNone ? Sort : $"{Sort} {Span(Demand, DemandUnit)}";

    /// <summary>What tells folded items apart.</summary>
    public ImmutableArray<string> Members { get; init; } = [];

    /// <summary>The rail on which it stands; empty: none.</summary>
    public string Rail { get; init; } = "";

    /// <summary>Lowest and highest steady voltage (V).</summary>
    public Bounds Voltage { get; init; } = Bounds.None;

    /// <summary>Highest voltage, transients included (V).</summary>
    public double Peak { get; init; } = double.NaN;

    /// <summary>The largest steady current (A), and whether it is a bound only.</summary>
    public Bounds Current { get; init; } = Bounds.None;

    /// <summary>Why there is no current, where there is none.</summary>
    public string NoCurrent { get; init; } = "";

    /// <summary>The smallest fault current at the far end of what it protects (A): bounds.</summary>
    public Bounds SmallestFault { get; init; } = Bounds.None;

    /// <summary>The largest fault current through it (A): bounds.</summary>
    public Bounds LargestFault { get; init; } = Bounds.None;

    /// <summary>The check with the tightest margin, the worst verdict first; null: none.</summary>
    public ReviewedCheck? Tightest { get; init; }

    /// <summary>Whether it stands for several with different figures, which are then given as ranges.</summary>
    public bool IsRange { get; init; }

    internal bool HasFigures => !Voltage.IsNone || !Current.IsNone || NoCurrent.Length > 0 || Tightest is not null;

    /// <summary>All that is shown of it but its name.</summary>
    internal string Look => string.Join('\u0001', Symbol, Note, VoltageText, PeakText, CurrentText, SmallestText, LargestText, MarginText, MarginNote);

    /// <summary>What it is, whatever its figures.</summary>
    internal string Kind => string.Join('\u0001', Symbol, Sort, DemandUnit, Tightest?.Outcome);

    internal string VoltageText => Voltage.IsNone ? "" : Voltage.Low == Voltage.High ? Figures.Text(Voltage.Low, "V") : Span(Voltage, "V");

    internal string PeakText => double.IsNaN(Peak) || Peak <= Voltage.High ? "" : $"{Figures.Text(Peak, "V")} peak";

    internal string CurrentText => NoCurrent.Length > 0 ? NoCurrent : Current.IsNone ? ""
        : IsRange ? Span(Current, "A")
        : double.IsInfinity(Current.High) ? "not known"
        : Current.Low == Current.High ? Figures.Text(Current.High, "A") : $"≤ {Figures.Text(Current.High, "A")}";

    internal string SmallestText => SmallestFault.IsNone ? ""
        : IsRange || SmallestFault.Low == SmallestFault.High ? Span(SmallestFault, "A")
        : SmallestFault.Low > 0 ? $"≥ {Figures.Text(SmallestFault.Low, "A")}"
        : "not known";

    internal string LargestText => LargestFault.IsNone ? ""
        : double.IsInfinity(LargestFault.High) ? "no bound"
        : IsRange || LargestFault.Low == LargestFault.High ? Span(LargestFault, "A")
        : $"≤ {Figures.Text(LargestFault.High, "A")}";

    internal string MarginText => Tightest is not { } check ? "" : $"{SignOf(check.Outcome)} {(check.Check.Margin is { } margin ? Shown.Margin(margin) : Components.Verdict.Word(check.Outcome))}";

    internal string MarginNote => Tightest is not { } check ? "" : check.Check.Margin is not null && check.Outcome != Outcome.Holds ? $"{Components.Verdict.Word(check.Outcome)}, {check.Check.Rule}" : check.Check.Rule;

    internal static string SignOf(Outcome outcome) => outcome switch { Outcome.Fails => "✕", Outcome.Undecided => "?", Outcome.Waived => "⊘", Outcome.Suggestion => "→", _ => "✓" };

    /// <summary>"F11, F12 and F13" of designators, "Sled 1 to Sled 8" of many.</summary>
    internal static string Listed(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        2 => $"{names[0]} and {names[1]}",
        _ => $"{names[0]}, {names[1]} … {names[names.Count - 1]}",
    };

    private static string Span(Bounds bounds, string unit)
    {
        var (low, high) = (Figures.Text(bounds.Low, unit), Figures.Text(bounds.High, unit));
        return low == high ? low : $"{low} to {high}";
    }
}

/// <summary>What hangs on a trunk of the supply tree: items in series, source first, and what hangs behind them.</summary>
internal sealed record TreeBranch(ImmutableArray<TreeItem> Items, ImmutableArray<TreeBranch> Below)
{
    /// <summary>How many branches it stands for.</summary>
    public int Count { get; init; } = 1;

    /// <summary>The branch with something else below.</summary>
    internal TreeBranch Over(ImmutableArray<TreeBranch> below) => new(Items, below) { Count = Count };

    internal int Rows => field > 0 ? field : field = Items.Length + Below.Sum(branch => branch.Rows);

    /// <summary>All that is shown of it but names.</summary>
    internal string Look => field ??= Join(item => item.Look, branch => branch.Look);

    /// <summary>What it is made of, whatever the figures.</summary>
    internal string Kind => field ??= Join(item => item.Kind, branch => branch.Kind);

    private string Join(Func<TreeItem, string> ofItem, Func<TreeBranch, string> ofBranch) => Hash(
        $"[{string.Join('\u0002', Items.Select(ofItem))}]({string.Join('\u0003', Below.Select(branch => branch.Count.ToString(System.Globalization.CultureInfo.InvariantCulture) + ofBranch(branch)))})");

    /// <summary>Short however deep the tree is.</summary>
    private static string Hash(string text) =>
        text.Length <= 64 ? text : Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text)));
}
