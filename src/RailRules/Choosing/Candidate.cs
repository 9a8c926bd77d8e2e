using System.Collections.Immutable;

namespace RailRules.Choosing;

/// <summary>The margin of one check of a part in its place, and what makes it.</summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Subject">What is judged.</param>
/// <param name="Margin">Capacity over demand; null in structural rules.</param>
/// <param name="Demand">What is asked; null in structural rules.</param>
/// <param name="Capacity">What can be given; null in structural rules.</param>
/// <param name="Message">The check's sentence.</param>
public sealed record PartMargin(string Rule, string Subject, double? Margin, Figure? Demand, Figure? Capacity, string Message)
{
    /// <summary>Whether the part itself is judged, not a conductor, load or device elsewhere.</summary>
    public bool IsOwn { get; init; }
}

/// <summary>A part that passes in its place: no check that the choice affects fails.</summary>
/// <param name="Part">The part as it stands in the table: an <see cref="Element"/> or a <see cref="TransientSuppressor"/>.</param>
/// <param name="Label">What people call it.</param>
public sealed record Candidate(object Part, string Label)
{
    /// <summary>Its place among the parts tried, from 0.</summary>
    public int Index { get; init; }

    /// <summary>Rated current, hold current or lowest trip level (A); of a clamp its stand-off voltage (V); null: unstated.</summary>
    public double? Rating { get; init; }

    /// <summary>Heat at the steady current (W), from the largest stated resistance; null: it states none.</summary>
    public double? Dissipation { get; init; }

    /// <summary>How many parts may be fitted instead.</summary>
    public int Alternates { get; init; }

    /// <summary>The checks left undecided that the choice affects.</summary>
    public ImmutableArray<PartMargin> Undecided { get; init; } = [];

    /// <summary>The margins of the checks that hold and that the choice affects, smallest first.</summary>
    public ImmutableArray<PartMargin> Margins { get; init; } = [];

    /// <summary>The smallest margin; infinite where nothing is demanded.</summary>
    public double SmallestMargin => Margins.Where(margin => margin.Margin is not null).Select(margin => margin.Margin!.Value).DefaultIfEmpty(double.PositiveInfinity).Min();
}

/// <summary>A part that fails in its place, and by what.</summary>
/// <param name="Part">The part as it stands in the table.</param>
/// <param name="Label">What people call it.</param>
public sealed record NearMiss(object Part, string Label)
{
    /// <summary>Its place among the parts tried, from 0.</summary>
    public int Index { get; init; }

    /// <summary>Its rating, as in <see cref="Candidate.Rating"/>.</summary>
    public double? Rating { get; init; }

    /// <summary>The checks that rule it out, worst first: rule, numbers and sentence.</summary>
    public ImmutableArray<PartMargin> RuledOutBy { get; init; } = [];

    /// <summary>How near it comes: the smallest margin among what rules it out; 0 where a structural rule does.</summary>
    public double Nearness => RuledOutBy.Select(margin => margin.Margin ?? 0).DefaultIfEmpty(0).Min();
}

/// <summary>The ratings that pass in a place among the parts tried, and what bounds them on either side.</summary>
/// <param name="Least">The smallest rating that passes (A; of clamps V).</param>
/// <param name="Most">The largest rating that passes.</param>
public sealed record RatingWindow(double Least, double Most)
{
    /// <summary>The nearest smaller rating tried, and what rules it out; null: no smaller one was tried.</summary>
    public NearMiss? Below { get; init; }

    /// <summary>The nearest larger rating tried, and what rules it out; null: no larger one was tried.</summary>
    public NearMiss? Above { get; init; }
}

/// <summary>Why no part passes: rules of which every part tried fails at least one.</summary>
/// <param name="First">The rule's id.</param>
/// <param name="Second">The other rule; null: the first rules out every part by itself.</param>
/// <param name="Message">The sentence for people, without a final period.</param>
public sealed record NoRoom(string First, string? Second, string Message)
{
    /// <summary>The part that comes nearest to passing the first rule alone.</summary>
    public NearMiss? NearestFirst { get; init; }

    /// <summary>The part that comes nearest to passing the second rule alone.</summary>
    public NearMiss? NearestSecond { get; init; }
}

/// <summary>The smallest change of one kind after which some part passes.</summary>
/// <param name="Kind">What is changed.</param>
/// <param name="Factor">By what factor, 1.01 or more.</param>
/// <param name="Part">The part that then passes.</param>
/// <param name="Label">What people call it.</param>
/// <param name="Message">The sentence for people, without a final period.</param>
public sealed record SmallestChange(ChangeKind Kind, double Factor, object Part, string Label, string Message);

/// <summary>What could be changed on a board where no part passes.</summary>
public enum ChangeKind
{
    /// <summary>Larger conductors and contacts on the rail: section, continuous current and conductance by the factor.</summary>
    LargerConductor,

    /// <summary>Less inrush: capacitance on the rail and below it divided by the factor.</summary>
    LessInrush,

    /// <summary>More fault current: resistance of the sources divided by the factor, their current limit multiplied by it.</summary>
    MoreFaultCurrent,

    /// <summary>Less fault current: resistance of the sources multiplied by the factor.</summary>
    LessFaultCurrent,
}
