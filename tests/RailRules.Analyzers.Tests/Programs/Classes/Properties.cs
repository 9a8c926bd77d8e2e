namespace Programs.Classes.Properties;

/// <summary>Automatic, computed, with bodies, private setters and static.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static int Automatic { get; } = 5;
    public static int Computed => Automatic * 2;
    public static int WithBody
    {
        get
        {
            var x = Automatic;
            return x + 1;
        }
    }

    private static string Run()
    {
        var meter = new Meter { Limit = 10 };
        meter.Add(4);
        meter.Add(9);
        return $"{meter.Total} {meter.Limit} {meter.Full} {meter.Peak}";
    }
}

public sealed class Meter
{
    private int limit;

    public int Limit
    {
        get => limit;
        set => limit = value * 1;
    }

    public int Total { get; private set; }

    public int Peak { get; private set; } = -1;

    public bool Full => Total >= Limit;

    public void Add(int amount)
    {
        Total += amount;
        if (amount > Peak)
            Peak = amount;
        if (Full)
            Limit += 100;
    }
}
