namespace Programs.Classes.StructsInBoxes;

/// <summary>Boxes hold copies.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static readonly bool Equal = new Pair(1, 2).Equals((object)new Pair(1, 2));
    public static readonly bool Different = Equals(new Pair(1, 2), new Pair(2, 1));
    public static readonly int Compared = new[] { new Pair(3, 1), new Pair(1, 9) }.Min().A;
    public static readonly string Area = ((IShape)new Square(3)).Area + " " + Describe(new Square(2));
    public static readonly Pair[] Defaults = new Pair[2];
    public static readonly (Pair, int)[,] Table = new (Pair, int)[1, 1];
    public static readonly Pair First = new List<Pair>().FirstOrDefault();
    public static readonly (Pair P, string? S) FirstTuple = new List<(Pair, string?)>().FirstOrDefault();

    private static string Run()
    {
        var pair = new Pair(1, 2);
        object box = pair;
        pair.A = 5;
        var copy = (Pair)box;
        copy.B = 7;
        object[] boxes = [box, pair, copy];
        var list = new List<Pair> { pair };
        var taken = list[0];
        taken.A++;
        list.Add(taken);
        Func<int> get = () => pair.A;
        pair.A = 6;
        return string.Join(';', boxes.Select(item => item is Pair(var a, var b) ? a + "," + b : "?")) + $" {list[0].A} {list[1].A} {get()}";
    }

    private static double Describe<T>(T shape)
        where T : IShape => shape.Area;
}

public record struct Pair(int A, int B) : IComparable<Pair>
{
    public readonly int CompareTo(Pair other) => A.CompareTo(other.A);
}

public interface IShape
{
    double Side { get; }

    double Area => Side * Side;
}

public readonly struct Square(double side) : IShape
{
    public double Side => side;
}
