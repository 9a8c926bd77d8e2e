namespace Programs.Generics.StaticAbstract;

/// <summary>Static abstract members of interfaces through type parameters.</summary>
public static class P
{
    public static readonly string Text = Describe<Celsius>(20) + Describe<Kelvin>(20);
    public static readonly Celsius Sum = Add(new Celsius(1), new Celsius(2));

    private static string Describe<T>(double value)
        where T : IScale<T> => T.Make(value).Value + T.Symbol + " ";

    private static T Add<T>(T a, T b)
        where T : IScale<T> => a + b;
}

public interface IScale<TSelf>
    where TSelf : IScale<TSelf>
{
    static abstract string Symbol { get; }

    double Value { get; }

    static abstract TSelf Make(double value);

    static abstract TSelf operator +(TSelf a, TSelf b);
}

public readonly record struct Celsius(double Value) : IScale<Celsius>
{
    public static string Symbol => "C";

    public static Celsius Make(double value) => new(value);

    public static Celsius operator +(Celsius a, Celsius b) => new(a.Value + b.Value);
}

public readonly record struct Kelvin(double Value) : IScale<Kelvin>
{
    public static string Symbol => "K";

    public static Kelvin Make(double value) => new(value + 273.15);

    public static Kelvin operator +(Kelvin a, Kelvin b) => new(a.Value + b.Value);
}
