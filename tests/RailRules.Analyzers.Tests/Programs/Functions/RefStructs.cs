namespace Programs.Functions.RefStructs;

/// <summary>Structs by reference change in place, by value they do not.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var meter = new Meter { Count = 1 };
        ByValue(meter);
        var first = meter.Count;
        ByReference(ref meter);
        meter.Advance();
        var array = new Meter[2];
        array[1].Advance();
        ByReference(ref array[1]);
        var list = new List<Meter> { meter };
        list[0].Advance();
        var copy = meter;
        copy.Advance();
        return $"{first} {meter.Count} {array[1].Count} {list[0].Count} {copy.Count}";
    }

    private static void ByValue(Meter meter) => meter.Count = 100;

    private static void ByReference(ref Meter meter) => meter.Count += 10;
}

public struct Meter
{
    public int Count;

    public void Advance() => Count++;
}
