using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using RailRules.Rules;

namespace RailRules;

/// <summary>
/// The outcome of one rule at one place: a demand weighed against a capacity, with the working that leads there.
/// </summary>
/// <param name="Rule">The rule's id, e.g. RAIL0201, or the team's own.</param>
/// <param name="Subject">What is judged: object and datum, e.g. <c>'Reed20' on rail 'Sled 1': DcVoltageRating</c>.</param>
/// <param name="Verdict">Holds, fails, undecided or waived.</param>
/// <param name="Margin">Capacity over demand; positive infinity where nothing is demanded; null in structural rules and where it cannot be known.</param>
/// <param name="Message">One sentence without a final period: part, datum and the number that matters.</param>
public sealed record Check(string Rule, string Subject, Verdict Verdict, double? Margin, string Message)
{
    /// <summary>The rail on which the subject stands; null where the finding is not about one rail.</summary>
    public Rail? Rail { get; init; }

    /// <summary>What is asked of the subject; null in structural rules.</summary>
    public Figure? Demand { get; init; }

    /// <summary>What the subject can give; null in structural rules.</summary>
    public Figure? Capacity { get; init; }

    /// <summary>The corner that decided, in words, e.g. "lowest voltage, hottest air, highest site".</summary>
    public string Corner { get; init; } = "";

    /// <summary>The steps from the data to demand and capacity, in order.</summary>
    public ImmutableArray<WorkingStep> Working { get; init; } = [];

    /// <summary>Standard and section, handbook, or "common practice, no source".</summary>
    public string Basis { get; init; } = "";

    /// <summary>The data that an undecided check lacks.</summary>
    public ImmutableArray<MissingDatum> Missing { get; init; } = [];

    /// <summary>Assumptions made where the data were silent, each a sentence.</summary>
    public ImmutableArray<string> Assumptions { get; init; } = [];

    /// <summary>
    /// The data the finding points at: first the place where it belongs (usually a datum of the rail), then others, the part's own datum above all.
    /// </summary>
    public ImmutableArray<DatumPlace> Places { get; init; } = [];

    /// <summary>The waiver that covers it, where its verdict is <see cref="Verdict.Waived"/>.</summary>
    public Waiver? Waiver { get; init; }

    /// <summary>What its verdict is without the waiver; null where no waiver covers it.</summary>
    public Verdict? WaivedVerdict { get; init; }

    /// <summary>The object that is judged, where it is one: with the first place it tells checks of one thing from those of another.</summary>
    internal object? Part { get; init; }

    /// <summary>Whether demand or capacity rests on the operating point of the board, and so on all that the operating point rests on.</summary>
    internal bool UsesOperatingPoint { get; init; }

    /// <summary>What tells it from others at the same place that must not be counted as one with it.</summary>
    internal string Aspect { get; init; } = "";

    /// <summary>The currents through elements that a failing check names, so that none is named again by a broader rule.</summary>
    internal ImmutableArray<NamedCurrents> Named { get; init; } = [];

    /// <summary>A check of a statement: holds if it is true.</summary>
    /// <param name="holds">The statement.</param>
    /// <param name="message">What a person reads if it is false.</param>
    /// <remarks>For rules of the team's own: rule, rail, subject and place are filled in where they are left out.</remarks>
    public static Check That(bool holds, string message) => new("", "", holds ? Verdict.Holds : Verdict.Fails, null, message);

    /// <summary>A check of a demand against a capacity: holds where the capacity covers it within 1e-9; nothing demanded is covered.</summary>
    /// <param name="demand">What is asked, in the same unit as the capacity.</param>
    /// <param name="capacity">What can be given.</param>
    /// <param name="message">What a person reads if it fails.</param>
    /// <param name="places">The data it is about: first the place where the finding belongs; none: the rail.</param>
    /// <remarks>Where either number is no number, or the units differ, the check is undecided.</remarks>
    public static Check Weigh(Figure demand, Figure capacity, string message, params DatumPlace[] places)
    {
        if (double.IsNaN(demand.Value) || double.IsNaN(capacity.Value) || demand.Unit != capacity.Unit)
        {
            return new("", "", Verdict.Undecided, null, $"{message}: {demand.Text} and {capacity.Text} cannot be compared") { Places = [.. places] };
        }

        var holds = Weighing.Covers(capacity.Value, demand.Value);
        return new("", "", holds ? Verdict.Holds : Verdict.Fails, demand.Value <= 0 ? double.PositiveInfinity : capacity.Value / demand.Value, message) { Demand = demand, Capacity = capacity, Places = [.. places] };
    }

    /// <summary>A check that cannot be made for want of a datum.</summary>
    /// <param name="owner">The object that lacks it.</param>
    /// <param name="datum">The datum: the property's name.</param>
    /// <param name="of">What people call the object.</param>
    public static Check Undecided(object owner, string datum, string of) =>
        new("", "", Verdict.Undecided, null, $"'{of}' cannot be judged without {datum}") { Missing = [new MissingDatum(new DatumPlace(owner, datum), of)], Places = [new DatumPlace(owner, datum)] };
}

/// <summary>Currents through an element that a check names.</summary>
/// <param name="Place">Where the element stands.</param>
/// <param name="Element">The element.</param>
/// <param name="Currents">From and up to which current (A).</param>
internal readonly record struct NamedCurrents(DatumPlace Place, object Element, Range Currents);

/// <summary>The verdict of a check.</summary>
public enum Verdict
{
    /// <summary>With the data entered, in the corners named, the capacity covers the demand.</summary>
    Holds,

    /// <summary>The demand exceeds the capacity.</summary>
    Fails,

    /// <summary>Data are missing that decide.</summary>
    Undecided,

    /// <summary>It fails, or is undecided, and the team has waived it, with a reason and an approver. Not a pass: it stays in every review.</summary>
    Waived,
}

/// <summary>A quantity as a check uses it.</summary>
/// <param name="Value">The value in the unit given; nine significant digits are kept in data, three are shown to people.</param>
/// <param name="Unit">The unit's symbol: V, A, Ω, A²s, °C, K, s, W; empty for ratios.</param>
public readonly record struct Figure(double Value, string Unit)
{
    /// <summary>The value for people: three significant digits, SI prefix, unit, invariant culture.</summary>
    public string Text => Figures.Text(Value, Unit);

    /// <inheritdoc/>
    public override string ToString() => Text;
}

/// <summary>One step of a worksheet.</summary>
/// <param name="Quantity">What is worked out, e.g. "current at lowest voltage".</param>
/// <param name="Formula">The formula in symbols, e.g. "P / V"; empty for a datum.</param>
/// <param name="Numbers">The formula with numbers, e.g. "600 W / 42.7 V"; empty for a datum.</param>
/// <param name="Result">The result.</param>
/// <param name="Source">Where the figure comes from: the datum, the policy, the standard.</param>
/// <param name="Place">The datum in the model, where the step is one.</param>
public sealed record WorkingStep(string Quantity, string Formula, string Numbers, Figure Result, string Source = "", DatumPlace? Place = null);

/// <summary>A datum of an object of the model, so that a reader can be led to where it was written.</summary>
/// <param name="Owner">The object: a rail, a part, a load.</param>
/// <param name="Datum">The property's name; null for the object itself.</param>
/// <param name="Index">The element of a collection datum; null for the datum as a whole.</param>
/// <remarks>Places are the same when the owner is the same object: two parts with equal data are two places.</remarks>
public readonly record struct DatumPlace(object Owner, string? Datum = null, int? Index = null)
{
    /// <summary>Whether it is the same datum of the same object.</summary>
    public bool Equals(DatumPlace other) => ReferenceEquals(Owner, other.Owner) && Datum == other.Datum && Index == other.Index;

    /// <inheritdoc/>
    public override int GetHashCode() =>
        unchecked((((RuntimeHelpers.GetHashCode(Owner) * 397) ^ (Datum?.GetHashCode() ?? 0)) * 397) ^ (Index ?? -1));
}

/// <summary>A datum that an undecided check lacks.</summary>
/// <param name="Place">Whose datum.</param>
/// <param name="Of">The owner's label, e.g. Reed20.</param>
public sealed record MissingDatum(DatumPlace Place, string Of);
