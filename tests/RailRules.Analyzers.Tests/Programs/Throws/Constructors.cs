namespace Programs.Throws.Constructors;

/// <summary>Constructors and setters that check what they are given.</summary>
public static class P
{
    public static Rating FromConstructor => new(-1);
    public static Rating FromInit => new(5) { Poles = 0 };
    public static Rating FromWith => new Rating(5) with { Poles = -2 };
}

public sealed record Rating
{
    private readonly int poles = 1;

    public Rating(double amperes)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(amperes);
        Amperes = amperes;
    }

    public double Amperes { get; }

    public int Poles
    {
        get => poles;
        init => poles = value > 0 ? value : throw new ArgumentOutOfRangeException(nameof(value));
    }
}
