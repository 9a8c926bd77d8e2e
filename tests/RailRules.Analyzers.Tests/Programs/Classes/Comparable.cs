namespace Programs.Classes.Comparable;

/// <summary>IComparable of one's own is used by sorting and by Max.</summary>
public static class P
{
    private static readonly Version[] Versions = [new(1, 10), new(1, 9), new(0, 99)];
    public static readonly string Sorted = string.Join(' ', Versions.Order());
    public static readonly string Max = Versions.Max()!.ToString();
    public static readonly bool Less = Versions[1] < Versions[0];
    public static readonly string ByList = SortList();
    public static readonly int Compared = Versions[0].CompareTo(Versions[1]);

    private static string SortList()
    {
        var list = Versions.ToList();
        list.Sort();
        list.Reverse();
        return string.Join(' ', list);
    }
}

public sealed class Version(int major, int minor) : IComparable<Version>
{
    private readonly int major = major;
    private readonly int minor = minor;

    public static bool operator <(Version a, Version b) => a.CompareTo(b) < 0;

    public static bool operator >(Version a, Version b) => a.CompareTo(b) > 0;

    public int CompareTo(Version? other) => other is null ? 1 : (major, minor).CompareTo((other.major, other.minor));

    public override string ToString() => $"{major}.{minor}";
}
