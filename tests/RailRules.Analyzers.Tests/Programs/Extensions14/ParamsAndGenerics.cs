// newest compiler only
namespace Programs.Extensions14.ParamsAndGenerics;

/// <summary>Generic extension blocks with constraints and params.</summary>
public static class P
{
    public static readonly int Largest = 3.Or(9, 4);
    public static readonly string Text = "b".Or("a", "c");
    public static readonly bool Any = new[] { 1, 2 }.Includes(2);
}

public static class Extras
{
    extension<T>(T value)
        where T : IComparable<T>
    {
        public T Or(params T[] others)
        {
            foreach (var other in others)
            {
                if (other.CompareTo(value) > 0)
                    value = other;
            }

            return value;
        }
    }

    extension<T>(IEnumerable<T> items)
    {
        public bool Includes(T item) => items.Contains(item);
    }
}
