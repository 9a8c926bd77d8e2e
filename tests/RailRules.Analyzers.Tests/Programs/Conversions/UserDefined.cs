using System.Globalization;

namespace Programs.Conversions.UserDefined;

/// <summary>Conversions that a type defines, implicit and explicit.</summary>
public static class P
{
    public static readonly double Celsius = new Kelvin(300);
    public static readonly Kelvin FromDouble = (Kelvin)20.5;
    public static readonly double Sum = new Kelvin(300) + new Kelvin(310);
    public static readonly string Text = (string)new Kelvin(0.5);
    public static readonly double Argument = Twice(new Kelvin(273.15));
    public static readonly Kelvin? Lifted = (Kelvin?)(double?)null;
    public static readonly double? LiftedBack = (Kelvin?)new Kelvin(283.15);
    public static readonly int Chain = (int)(double)new Kelvin(280.9);

    private static double Twice(double celsius) => 2 * celsius + 1;
}

public readonly record struct Kelvin(double Value)
{
    public static implicit operator double(Kelvin value) => Math.Round(value.Value - 273.15, 6);

    public static explicit operator Kelvin(double celsius) => new(celsius + 273.15);

    public static explicit operator string(Kelvin value) => value.Value.ToString("0.0", CultureInfo.InvariantCulture) + " K";
}
