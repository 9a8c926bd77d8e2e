namespace Programs.Generics.Constraints;

/// <summary>Constraints of every kind.</summary>
public static class P
{
    public static readonly string New = Make<Widget>().Name;
    public static readonly int Struct = Size<int>(5) + Size<int>(null);
    public static readonly string Class = Name<string>(null) + Name("x");
    public static readonly double Interface = Total([new Widget { Weight = 2 }, new Widget { Weight = 3.5 }]);
    public static readonly string Base = Describe(new Special());
    public static readonly string Enumeration = First<DayOfWeek>(3);

    private static T Make<T>()
        where T : IWeighted, new() => new();

    private static int Size<T>(T? value)
        where T : struct => value.HasValue ? 1 : 0;

    private static string Name<T>(T? value)
        where T : class => value?.ToString() ?? "null";

    private static double Total<T>(IEnumerable<T> items)
        where T : IWeighted
    {
        var sum = 0.0;
        foreach (var item in items)
            sum += item.Weight;
        return sum;
    }

    private static string Describe<T>(T item)
        where T : Widget => item.Name + item.Weight;

    private static string First<T>(int value)
        where T : struct, Enum => ((T)(object)(DayOfWeek)value).ToString();
}

public interface IWeighted
{
    string Name { get; }

    double Weight { get; }
}

public class Widget : IWeighted
{
    public virtual string Name => "widget";

    public double Weight { get; init; } = 1;
}

public sealed class Special : Widget
{
    public override string Name => "special";
}
