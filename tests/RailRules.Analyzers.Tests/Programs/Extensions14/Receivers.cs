// newest compiler only
namespace Programs.Extensions14.Receivers;

/// <summary>A receiver by value is a copy, one by reference is not.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var meter = new Meter();
        var first = meter.Bumped();
        var before = meter.Count;
        meter.Bump();
        meter.Bump();
        return $"{first} {before} {meter.Count}";
    }
}

public struct Meter
{
    public int Count;

    public void Up() => Count++;
}

public static class Extras
{
    extension(Meter meter)
    {
        public int Bumped()
        {
            meter.Up();
            meter.Count += 10;
            return meter.Count;
        }
    }

    extension(ref Meter meter)
    {
        public void Bump() => meter.Up();
    }
}
