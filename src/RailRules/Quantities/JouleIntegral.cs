using System.Globalization;

namespace RailRules;

/// <summary>
/// A Joule integral, I²t: the integral of the square of a current over time, in ampere squared seconds (A²s).
/// IEC: Joule integral; North America: I²t, "I squared t". Source: IEC 60269-1, terms on the Joule integral (from memory).
/// </summary>
/// <param name="AmpereSquaredSeconds">The value in A²s. A non-finite or negative value is reported as RAIL0003, it never throws.</param>
public readonly record struct JouleIntegral(double AmpereSquaredSeconds) : IComparable<JouleIntegral>, IComparable
{
    /// <summary>No energy at all: 0 A²s.</summary>
    public static JouleIntegral Zero => default;

    /// <summary>A Joule integral of <paramref name="value"/> A²s.</summary>
    public static JouleIntegral FromAmpereSquaredSeconds(double value) => new(value);

    /// <summary>The sum of two Joule integrals.</summary>
    public static JouleIntegral operator +(JouleIntegral left, JouleIntegral right) => new(left.AmpereSquaredSeconds + right.AmpereSquaredSeconds);

    /// <summary>The difference of two Joule integrals.</summary>
    public static JouleIntegral operator -(JouleIntegral left, JouleIntegral right) => new(left.AmpereSquaredSeconds - right.AmpereSquaredSeconds);

    /// <summary>A Joule integral times a number.</summary>
    public static JouleIntegral operator *(JouleIntegral value, double factor) => new(value.AmpereSquaredSeconds * factor);

    /// <summary>A number times a Joule integral.</summary>
    public static JouleIntegral operator *(double factor, JouleIntegral value) => new(value.AmpereSquaredSeconds * factor);

    /// <summary>A Joule integral divided by a number.</summary>
    public static JouleIntegral operator /(JouleIntegral value, double divisor) => new(value.AmpereSquaredSeconds / divisor);

    /// <summary>The ratio of two Joule integrals.</summary>
    public static double operator /(JouleIntegral left, JouleIntegral right) => left.AmpereSquaredSeconds / right.AmpereSquaredSeconds;

    /// <summary>Whether the left one is the smaller.</summary>
    public static bool operator <(JouleIntegral left, JouleIntegral right) => left.AmpereSquaredSeconds < right.AmpereSquaredSeconds;

    /// <summary>Whether the left one is the larger.</summary>
    public static bool operator >(JouleIntegral left, JouleIntegral right) => left.AmpereSquaredSeconds > right.AmpereSquaredSeconds;

    /// <summary>Whether the left one is not the larger.</summary>
    public static bool operator <=(JouleIntegral left, JouleIntegral right) => left.AmpereSquaredSeconds <= right.AmpereSquaredSeconds;

    /// <summary>Whether the left one is not the smaller.</summary>
    public static bool operator >=(JouleIntegral left, JouleIntegral right) => left.AmpereSquaredSeconds >= right.AmpereSquaredSeconds;

    /// <inheritdoc/>
    public int CompareTo(JouleIntegral other) => AmpereSquaredSeconds.CompareTo(other.AmpereSquaredSeconds);

    /// <inheritdoc/>
    public int CompareTo(object? obj) => obj is JouleIntegral other ? CompareTo(other) : obj is null ? 1 : throw new ArgumentException("A Joule integral is compared with another one only.", nameof(obj));

    /// <summary>The value with its unit, in the invariant culture.</summary>
    public override string ToString() => AmpereSquaredSeconds.ToString("G", CultureInfo.InvariantCulture) + " A²s";
}
