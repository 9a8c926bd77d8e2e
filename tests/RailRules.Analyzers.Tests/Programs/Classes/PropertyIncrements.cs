namespace Programs.Classes.PropertyIncrements;

/// <summary>++, -- and compound assignment on properties and indexers run getter and setter once.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var counter = new Counter();
        var a = counter.Value++;
        var b = ++counter.Value;
        counter.Value += 10;
        counter[3] += 5;
        var c = counter[3]--;
        var d = counter[1]++ + ++counter[1];
        return $"{a} {b} {c} {d} {counter.Value} {counter.Log}";
    }
}

public sealed class Counter
{
    private readonly int[] cells = new int[5];
    private int value;

    public string Log { get; private set; } = "";

    public int Value
    {
        get
        {
            Log += "g";
            return value;
        }

        set
        {
            Log += "s";
            this.value = value;
        }
    }

    public int this[int index]
    {
        get
        {
            Log += "G" + index;
            return cells[index];
        }

        set
        {
            Log += "S" + index;
            cells[index] = value;
        }
    }
}
