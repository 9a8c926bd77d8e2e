namespace Programs.Classes.PrivateSetters;

/// <summary>Init, private and computed members seen from inside.</summary>
public static class P
{
    public static readonly string Text = Sensor.Make(5).Text;
}

public sealed class Sensor
{
    private Sensor()
    {
    }

    public int Level { get; private set; }

    public string Text => $"{Level}{(IsHigh ? "!" : "")}";

    private bool IsHigh => Level > 3;

    public static Sensor Make(int level)
    {
        var sensor = new Sensor { Level = level };
        sensor.Level -= 1;
        return sensor;
    }
}
