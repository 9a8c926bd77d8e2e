namespace Programs.Records.InitAndRequired;

/// <summary>Required and init-only members, defaults and bodies.</summary>
public static class P
{
    private static readonly Motor M = new() { Name = "m1", Watts = 400 };
    public static readonly string Text = M.ToString();
    public static readonly double Amperes = M.Amperes(48);
    public static readonly Motor Second = M with { Watts = 480 };
    public static readonly int Ratio = new Gear { Teeth = 20 }.Ratio;
}

public sealed record Motor
{
    public required string Name { get; init; }

    public double Watts { get; init; } = 100;

    public double Amperes(double volts) => Watts / volts;
}

public sealed record Gear
{
    private readonly int teeth = 1;

    public int Teeth
    {
        get => teeth;
        init => teeth = value < 10 ? 10 : value;
    }

    public int Ratio => Teeth / 3;
}
