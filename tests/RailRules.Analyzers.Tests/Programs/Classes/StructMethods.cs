namespace Programs.Classes.StructMethods;

/// <summary>Methods that change a struct, called on variables, elements and readonly fields.</summary>
public static class P
{
    private static readonly Gauge Fixed = new();
    public static readonly string Result = Run();
    public static readonly int ReadonlyField = OnReadonly();

    private static string Run()
    {
        var gauge = new Gauge();
        gauge.Up();
        gauge.Up();
        var array = new Gauge[1];
        array[0].Up();
        var inTuple = (Gauge: gauge, 1);
        inTuple.Gauge.Up();
        var dictionary = new Dictionary<int, Gauge> { [1] = gauge };
        dictionary[1].Up();
        return $"{gauge.Value} {array[0].Value} {inTuple.Gauge.Value} {dictionary[1].Value}";
    }

    private static int OnReadonly()
    {
        var holder = new Holder();
        holder.Try();
        return holder.Value;
    }
}

public struct Gauge
{
    public int Value { get; private set; }

    public int Up() => ++Value;
}

public sealed class Holder
{
    private readonly Gauge gauge = new();

    public int Value => gauge.Value;

    public int Try() => gauge.Up() + gauge.Up();
}
