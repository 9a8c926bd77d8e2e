namespace Programs.Functions.RefLocalsAndReturns;

/// <summary>References as locals and results.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static readonly string Members = OfMembers();
    public static readonly int Doubled = Double([1, 2, 3]);

    private static string Run()
    {
        var array = new[] { 1, 2, 3 };
        ref var middle = ref array[1];
        middle = 20;
        middle++;
        Largest(array) = -1;
        var x = 1;
        var y = 2;
        ref var chosen = ref x > y ? ref x : ref y;
        chosen = 9;
        chosen = ref x;
        chosen += 5;
        var copied = Largest(array);
        copied = 77;
        ref readonly var seen = ref array[2];
        array[2] = 8;
        Add(ref Largest(array), 100);
        (x > y ? ref x : ref y)--;
        return $"{string.Join(',', array)} {x} {y} {copied} {seen}";
    }

    private static void Add(ref int target, int more) => target += more;

    private static ref int Largest(int[] values)
    {
        var at = 0;
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] > values[at])
                at = i;
        }

        return ref values[at];
    }

    private static string OfMembers()
    {
        var bank = new Bank();
        bank[1] = 5;
        bank[1]++;
        bank.First = 3;
        ref var alias = ref bank[1];
        alias *= 2;
        ref var cell = ref bank.Cell;
        cell.Amount = 4;
        bank.Cell.Amount++;
        bank.CellByReference.Amount += 10;
        return $"{bank[0]} {bank[1]} {bank.First} {bank.Cell.Amount} {cell.Amount}";
    }

    private static int Double(int[] values)
    {
        Span<int> span = values;
        foreach (ref var value in span)
            value *= 2;
        span[0] += 50;
        return values.Sum();
    }
}

public sealed class Bank
{
    private readonly int[] values = new int[3];

    public Cell Cell;

    public ref int this[int index] => ref values[index];

    public ref int First => ref values[0];

    public ref Cell CellByReference => ref Cell;
}

public struct Cell
{
    public int Amount;
}
