using System.Collections.Immutable;

namespace RailRules;

/// <summary>
/// A board's rails with what is derived from them once and used by many rules: order, policies, surroundings, voltages, operating point.
/// </summary>
public sealed partial class Network
{
    /// <summary>Builds the network of a board.</summary>
    /// <param name="rails">The board's rails and those that feed them, in declaration order.</param>
    /// <param name="isUnknown">Whether a datum could not be worked out (owner, property): it is then null or empty in the model, and must not count as absent.</param>
    public Network(IEnumerable<Rail> rails, Func<object, string, bool>? isUnknown = null)
    {
        Rails = [.. rails];
        this.isUnknown = isUnknown;
    }

    private readonly Func<object, string, bool>? isUnknown;

    /// <summary>The rails, in declaration order; each once.</summary>
    public ImmutableArray<Rail> Rails { get; }

    /// <summary>Whether a datum was written but could not be worked out.</summary>
    public bool IsUnknown(object owner, string datum) => isUnknown?.Invoke(owner, datum) ?? false;
}
