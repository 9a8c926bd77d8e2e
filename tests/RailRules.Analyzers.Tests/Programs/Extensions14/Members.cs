// newest compiler only
namespace Programs.Extensions14.Members;

/// <summary>Extension blocks with properties and methods.</summary>
public static class P
{
    public static readonly double Area = 3.0.Squared;
    public static readonly string Text = "ab".Twice();
    public static readonly bool Empty = new List<int>().IsEmpty && !new List<int> { 1 }.IsEmpty;
    public static readonly int Last = new List<int> { 1, 5 }.LastItem;
    public static readonly double Chained = 2.0.Squared.Squared;
}

public static class Extras
{
    extension(double value)
    {
        public double Squared => value * value;
    }

    extension(string text)
    {
        public string Twice() => text + text;
    }

    extension<T>(IReadOnlyList<T> list)
    {
        public bool IsEmpty => list.Count == 0;

        public T LastItem => list[^1];
    }
}
