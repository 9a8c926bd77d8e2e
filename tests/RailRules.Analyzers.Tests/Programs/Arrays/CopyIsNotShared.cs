namespace Programs.Arrays.CopyIsNotShared;

/// <summary>Assignment shares an array, spreading copies it.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        int[] a = [1, 2, 3];
        var shared = a;
        int[] copy = [.. a];
        var cloned = (int[])a.Clone();
        var sliced = a[..];
        a[0] = 100;
        return $"{shared[0]} {copy[0]} {cloned[0]} {sliced[0]} {a.Length}";
    }
}
