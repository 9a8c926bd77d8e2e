using System.Collections.Immutable;
using System.Globalization;

namespace Programs.Collections.ListOperations;

/// <summary>A list changed in every way.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Steps = [.. Run()];

    private static List<string> Run()
    {
        var log = new List<string>();
        var list = new List<int> { 3, 1, 2 };
        void Note() => log.Add(string.Join(' ', list));
        list.Add(5);
        list.Insert(1, 9);
        Note();
        list.Remove(1);
        list.RemoveAt(0);
        Note();
        list.AddRange([7, 7, 8]);
        Note();
        list.Sort();
        Note();
        list.Reverse();
        Note();
        log.Add(list.RemoveAll(x => x == 7).ToString(CultureInfo.InvariantCulture));
        log.Add($"{list.IndexOf(5)} {list.Contains(8)} {list.Find(x => x < 6)} {list.FindIndex(x => x > 100)} {list.Exists(x => x == 9)} {list.TrueForAll(x => x > 0)}");
        list.Sort((a, b) => b.CompareTo(a));
        Note();
        list[0] = -1;
        list.InsertRange(1, [4, 4]);
        Note();
        log.Add(string.Join(' ', list.GetRange(1, 2).ConvertAll(x => x * 0.5)));
        list.Clear();
        log.Add(list.Count.ToString(CultureInfo.InvariantCulture));
        return log;
    }
}
