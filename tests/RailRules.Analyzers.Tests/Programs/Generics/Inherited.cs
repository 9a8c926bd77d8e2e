namespace Programs.Generics.Inherited;

/// <summary>Generic base classes closed by their derived classes.</summary>
public static class P
{
    public static readonly string Text = new Volts(5).Show() + new Amperes(2).Show();
    public static readonly double Value = new Volts(5).Scale(3).Value;
}

public abstract class Unit<TSelf>(double value)
    where TSelf : Unit<TSelf>
{
    public double Value => value;

    protected abstract string Symbol { get; }

    public string Show() => Value + Symbol + " ";

    public TSelf Scale(double by) => Make(Value * by);

    protected abstract TSelf Make(double value);
}

public sealed class Volts(double value) : Unit<Volts>(value)
{
    protected override string Symbol => "V";

    protected override Volts Make(double value) => new(value);
}

public sealed class Amperes(double value) : Unit<Amperes>(value)
{
    protected override string Symbol => "A";

    protected override Amperes Make(double value) => new(value);
}
