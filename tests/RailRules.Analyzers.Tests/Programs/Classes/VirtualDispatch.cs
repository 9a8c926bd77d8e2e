namespace Programs.Classes.VirtualDispatch;

/// <summary>Override, new, base calls and abstract members.</summary>
public static class P
{
    public static readonly string AsDerived = new Derived().All();
    public static readonly string AsBase = ((Base)new Derived()).All();
    public static readonly string Hidden = new Derived().Hidden() + ((Base)new Derived()).Hidden();
    public static readonly string Virtual = ((Base)new Derived()).Virtual();
    public static readonly string Sealed = new Last().Virtual();
    public static readonly double Property = ((Base)new Last()).Factor;
}

public abstract class Base
{
    public virtual double Factor => 1;

    public virtual string Virtual() => "B";

    public string Hidden() => "b";

    public abstract string Abstract();

    public string All() => Virtual() + Hidden() + Abstract();
}

public class Derived : Base
{
    public override double Factor => base.Factor * 2;

    public override string Virtual() => "D" + base.Virtual();

    public new string Hidden() => "d";

    public override string Abstract() => "A";
}

public sealed class Last : Derived
{
    public override double Factor => base.Factor + 0.5;

    public override string Virtual() => "L" + base.Virtual();
}
