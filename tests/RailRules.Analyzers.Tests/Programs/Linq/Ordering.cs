namespace Programs.Linq.Ordering;

/// <summary>Order by several keys, stable, descending and with comparers.</summary>
public static class P
{
    private static readonly (string Name, int Age)[] People = [("d", 30), ("a", 25), ("c", 30), ("b", 25)];
    public static readonly string ByAge = Names(People.OrderBy(p => p.Age));
    public static readonly string ByAgeThenName = Names(People.OrderBy(p => p.Age).ThenBy(p => p.Name, StringComparer.Ordinal));
    public static readonly string Descending = Names(People.OrderByDescending(p => p.Age).ThenByDescending(p => p.Name, StringComparer.Ordinal));
    public static readonly string Mixed = Names(People.OrderByDescending(p => p.Age).ThenBy(p => p.Name, StringComparer.Ordinal));
    public static readonly string Reversed = Names(People.Reverse());
    public static readonly string Comparer = string.Join(' ', new[] { "b", "A", "a" }.OrderBy(s => s, StringComparer.OrdinalIgnoreCase));
    public static readonly string Natural = string.Join(' ', new[] { 3.5, -1, 2 }.OrderDescending());
    public static readonly string ByBool = string.Join(' ', new[] { 1, 2, 3, 4 }.OrderBy(n => n % 2 == 0));

    private static string Names(IEnumerable<(string Name, int Age)> people) => string.Concat(people.Select(p => p.Name));
}
