namespace Programs.Generics.NumericInterfaces;

/// <summary>Generic arithmetic over the library's number interfaces.</summary>
public static class P
{
    public static readonly int Ints = Sum([1, 2, 3]);
    public static readonly double Doubles = Sum([0.5, 0.25]);

    private static T Sum<T>(IEnumerable<T> values)
        where T : System.Numerics.INumber<T>
    {
        var sum = T.Zero;
        foreach (var value in values)
            sum += value;
        return sum;
    }
}
