using System.Runtime.CompilerServices;

namespace RailRules;

/// <summary>
/// Whatever can feed a rail: a <see cref="Supply"/>, a <see cref="Battery"/>, a <see cref="Converter"/> or another <see cref="Rail"/>.
/// The set is closed: nothing outside this library derives from it. Sources are compared by reference and named after the
/// member that declares them unless <see cref="Name"/> says otherwise.
/// </summary>
public abstract record Source
{
    private protected Source(string? member)
    {
        Member = member ?? "";
        Name = Member;
    }

    /// <summary>The name people see in messages and worksheets; the declaring member's name unless stated.</summary>
    public string Name { get; init; }

    /// <summary>Where the data come from: data sheet and line, measurement, standard and section.</summary>
    public string? Citation { get; init; }

    /// <summary>The member in which the source was made, as the compiler gave it.</summary>
    internal string Member { get; }

    /// <summary>Sources are one and the same thing only when they are the same object.</summary>
    public virtual bool Equals(Source? other) => ReferenceEquals(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => RuntimeHelpers.GetHashCode(this);

    /// <summary>The source's name.</summary>
    public sealed override string ToString() => Name;
}
