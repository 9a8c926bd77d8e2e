namespace Programs.Classes.Comparers;

/// <summary>Comparers of one's own given to sorting, sets and dictionaries.</summary>
public static class P
{
    public static readonly string Sorted = string.Join(' ', new[] { "ccc", "a", "bb", "dd" }.Order(new ByLength()));
    public static readonly string Created = string.Join(' ', new[] { 3, -5, 1 }.Order(Comparer<int>.Create((a, b) => Math.Abs(a).CompareTo(Math.Abs(b)))));
    public static readonly int Distinct = new[] { "a", "b", "cc" }.Distinct(new SameLength()).Count();
    public static readonly bool Key = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase) { ["Fuse"] = 1 }.ContainsKey("FUSE");
    public static readonly int Set = new HashSet<string>(new SameLength()) { "aa", "bb", "c" }.Count;
}

public sealed class ByLength : IComparer<string>
{
    public int Compare(string? x, string? y) => (x?.Length ?? 0) != (y?.Length ?? 0) ? (x?.Length ?? 0) - (y?.Length ?? 0) : string.CompareOrdinal(y, x);
}

public sealed class SameLength : IEqualityComparer<string>
{
    public bool Equals(string? x, string? y) => x?.Length == y?.Length;

    public int GetHashCode(string obj) => obj.Length;
}
