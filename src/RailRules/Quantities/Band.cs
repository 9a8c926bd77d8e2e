namespace RailRules;

/// <summary>
/// A datum with a tolerance: lowest, usual and highest value. An exact value converts to a band of no width.
/// </summary>
/// <typeparam name="T">The quantity, e.g. <c>ElectricPotential</c>.</typeparam>
/// <param name="Min">The lowest value the datum can take (data sheet column "min").</param>
/// <param name="Typical">The usual value (data sheet column "typ" or "nom"); null where none is stated.</param>
/// <param name="Max">The highest value the datum can take (data sheet column "max").</param>
/// <remarks>A band whose ends are out of order is reported as RAIL0003 at the place where it is written; it never throws.</remarks>
public readonly record struct Band<T>(T Min, T? Typical, T Max)
    where T : struct, IComparable<T>
{
    /// <summary>An exact value is a band of no width.</summary>
    public static implicit operator Band<T>(T exact) => new(exact, exact, exact);

    /// <summary>Whether the lowest value does not exceed the typical, nor the typical the highest.</summary>
    public bool IsOrdered =>
        Min.CompareTo(Max) <= 0
        && (Typical is not { } typical || (Min.CompareTo(typical) <= 0 && typical.CompareTo(Max) <= 0));
}

/// <summary>Makes bands of two or three values.</summary>
public static class Band
{
    /// <summary>A band with a lowest, a usual and a highest value, in that order.</summary>
    public static Band<T> Of<T>(T min, T typical, T max)
        where T : struct, IComparable<T> => new(min, typical, max);

    /// <summary>A band whose usual value is not stated.</summary>
    public static Band<T> Of<T>(T min, T max)
        where T : struct, IComparable<T> => new(min, null, max);
}
