namespace Programs.Classes.Structs;

/// <summary>Structs are copied on assignment, in arrays, in properties and in closures.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static readonly Pair Default = new();
    public static readonly Pair Constructed = new(1);

    private static string Run()
    {
        var a = new Pair(1);
        var b = a;
        b.Second = 9;
        var array = new[] { a, a };
        array[0].Second = 5;
        var holder = new Holder { Pair = a };
        var taken = holder.Pair;
        taken.Second = 7;
        holder.Field.Second = 8;
        Func<int> read = () => a.Second;
        a.Second = 3;
        object boxed = a;
        a.Second = 4;
        return $"{b.Second} {array[0].Second}{array[1].Second} {holder.Pair.Second} {holder.Field.Second} {read()} {((Pair)boxed).Second}";
    }
}

public struct Pair
{
    public int First;

    public int Second;

    public Pair(int first)
    {
        First = first;
        Second = first * 2;
    }
}

public sealed class Holder
{
    public Pair Field;

    public Pair Pair { get; set; }
}
