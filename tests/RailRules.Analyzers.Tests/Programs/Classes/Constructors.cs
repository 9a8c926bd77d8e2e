using System.Collections.Immutable;

namespace Programs.Classes.Constructors;

/// <summary>Constructors, chaining, initialisers and their order.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Log = [.. new Derived("d").Log];
    public static readonly int Chained = new Derived().Count;
    public static readonly string Default = new Plain().Text;
}

public class Base
{
    public readonly List<string> Log = [];

    private readonly int first;

    public Base(string name)
    {
        Log.Add("base " + name + first);
        Hook();
    }

    protected virtual void Hook() => Log.Add("base hook");
}

public class Derived : Base
{
    private readonly string field = "set";
    private string late = "";

    public Derived(string name)
        : base(name + "!")
    {
        late = "late";
        Log.Add("derived " + field + late);
        Hook();
    }

    public Derived()
        : this("default") => Count = Log.Count;

    public int Count { get; }

    protected override void Hook() => Log.Add($"derived hook {field}{late}");
}

public class Plain
{
    public string Text { get; } = "plain" + 1;
}
