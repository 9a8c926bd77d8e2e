// newest compiler only
namespace Programs.Classes.CompoundOperators14;

/// <summary>Operators that change their operand where it stands.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var sum = new Sum();
        sum += 3;
        sum += 4;
        var same = sum;
        same += 5;
        var count = new Count();
        count++;
        ++count;
        var copy = count;
        copy++;
        return $"{sum.Total} {same.Total} {count.Value} {copy.Value}";
    }
}

public sealed class Sum
{
    public int Total { get; private set; }

    public void operator +=(int more) => Total += more;
}

public struct Count
{
    public int Value;

    public void operator ++() => Value++;
}
