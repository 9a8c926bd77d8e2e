namespace Programs.Classes.StructReceivers;

/// <summary>Whether a method changes the struct itself or a copy, for every kind of receiver.</summary>
public static class P
{
    private static readonly Counter Fixed = new(5);

    public static readonly string Variables = OnVariables();
    public static readonly string Copies = OnCopies();
    public static readonly string Fields = OnFields();
    public static readonly string Generic = OnGenerics();
    public static readonly string Parameters = OnParameters();
    public static readonly string Static = OnStatic();
    public static readonly string This = new Outer().Run();
    public static readonly string Getter = WithGetter();

    private static string OnVariables()
    {
        var one = new Counter(1);
        var two = one;
        one.Up();
        (one).Up();
        var array = new Counter[2];
        array[0].Up();
        array[^1].Up();
        array[^1].Up();
        var grid = new Counter[1, 2];
        grid[0, 1].Up();
        var tuple = (A: one, B: 2);
        tuple.A.Up();
        return $"{one.Value} {two.Value} {array[0].Value} {array[1].Value} {grid[0, 1].Value} {grid[0, 0].Value} {tuple.A.Value}";
    }

    private static string OnCopies()
    {
        var one = new Counter(1);
        var list = new List<Counter> { one };
        list[0].Up();
        var map = new Dictionary<string, Counter> { ["a"] = one };
        map["a"].Up();
        var results = $"{Make(3).Up()} {((Counter)one).Up()} {(one.Value > 0 ? one : list[0]).Up()}";
        Counter? maybe = one;
        maybe.Value.Up();
        maybe?.Up();
        foreach (var item in list)
            results += " " + item.Up() + item.Up();
        Counter other;
        (other = one).Up();
        return $"{results} {one.Value} {list[0].Value} {map["a"].Value} {maybe.Value.Value} {other.Value}";
    }

    private static string OnFields()
    {
        var holder = new Holder();
        holder.Free.Up();
        holder.Property.Up();
        holder.Fixed.Up();
        var nested = new Nest { Inner = new Counter(7) };
        nested.Inner.Up();
        nested.Deep.Free.Up();
        var readOnly = new ReadOnlyNest(new Counter(3));
        readOnly.Inner.Up();
        return $"{holder.Free.Value} {holder.Property.Value} {holder.Fixed.Value} {nested.Inner.Value} {nested.Deep.Free.Value} {readOnly.Inner.Value} {holder.InConstructor}";
    }

    private static string OnGenerics()
    {
        var one = new Counter(1);
        Bump(one);
        var first = one.Value;
        BumpByReference(ref one);
        return $"{first} {one.Value} {Bumped(one)} {SetAndRead(one)}";
    }

    private static void Bump<T>(T item)
        where T : ICounter => item.Up();

    private static void BumpByReference<T>(ref T item)
        where T : ICounter => item.Up();

    private static int Bumped<T>(T item)
        where T : ICounter
    {
        item.Up();
        item.Up();
        return item.Value;
    }

    private static int SetAndRead<T>(T item)
        where T : ICounter
    {
        item.Spare = 40;
        item.Spare += 2;
        return item.Spare;
    }

    private static string OnParameters()
    {
        var one = new Counter(1);
        var seen = ReadBoth(in one, ref one);
        return $"{InOnly(in one)} {ByValue(one)} {one.Value} {seen}";
    }

    private static int ReadBoth(in Counter seen, ref Counter changed)
    {
        var before = seen.Value;
        changed.Up();
        return before * 100 + seen.Value;
    }

    private static int InOnly(in Counter counter)
    {
        counter.Up();
        counter.Up();
        return counter.Value;
    }

    private static int ByValue(Counter counter)
    {
        counter.Up();
        return counter.Value;
    }

    private static string WithGetter()
    {
        var ticket = new Ticket();
        var first = ticket.Next;
        var second = ticket.Next;
        var list = new List<Ticket> { ticket };
        return $"{first} {second} {list[0].Next} {list[0].Next}";
    }

    private static string OnStatic() => $"{Fixed.Up()} {Fixed.Up()} {Fixed.Value}";

    private static Counter Make(int start) => new(start);
}

public interface ICounter
{
    int Value { get; }

    int Spare { get; set; }

    int Up();
}

public struct Counter(int start) : ICounter
{
    public int Value { get; private set; } = start;

    public int Spare { get; set; }

    public int Up() => ++Value;

    public readonly int Peek() => CopyUp();

    public readonly int CopyUp()
    {
        var copy = this;
        copy.Up();
        return copy.Value + Value;
    }
}

public struct Ticket
{
    private int given;

    public int Next => ++given;
}

public sealed class Holder
{
    public Counter Free = new(1);
    public readonly Counter Fixed = new(2);

    public Holder()
    {
        Fixed.Up();
        InConstructor = Fixed.Value;
        Action later = () => Fixed.Up();
        later();
    }

    public Counter Property { get; } = new(3);

    public int InConstructor { get; }
}

public struct Nest
{
    public Counter Inner;
    public readonly Holder Deep = new();

    public Nest()
    {
    }
}

public readonly struct ReadOnlyNest(Counter inner)
{
    public readonly Counter Inner = inner;
}

public struct Outer
{
    private Counter counter = new(10);

    public Outer()
    {
    }

    public string Run()
    {
        counter.Up();
        var inside = Frozen();
        Replace();
        return $"{inside} {counter.Value}";
    }

    private readonly int Frozen()
    {
        counter.Up();
        return counter.Value;
    }

    private void Replace()
    {
        var old = counter.Value;
        this = new Outer();
        counter.Up();
        counter.Up();
        counter.Spare = old;
    }
}
