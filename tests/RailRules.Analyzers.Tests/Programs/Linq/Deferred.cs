namespace Programs.Linq.Deferred;

/// <summary>Queries see later changes and run anew each time.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var numbers = new List<int> { 1, 2, 3 };
        var factor = 10;
        var calls = 0;
        var query = numbers.Where(n => n > 1).Select(n =>
        {
            calls++;
            return n * factor;
        });
        numbers.Add(4);
        factor = 100;
        var first = query.Sum();
        var list = query.ToList();
        numbers.Clear();
        var second = query.Count();
        return $"{first} {list.Count} {second} {calls}";
    }
}
