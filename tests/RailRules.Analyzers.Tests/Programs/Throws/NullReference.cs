namespace Programs.Throws.NullReference;

/// <summary>Members of nothing.</summary>
public static class P
{
    private static readonly string? Text = null;
    private static readonly int[]? Array = null;
    private static readonly Node Tree = new(null);
    public static int Length => Text!.Length;
    public static int Element => Array![0];
    public static int? Deep => Tree.Next!.Next?.Value;
    public static int Loop
    {
        get
        {
            var sum = 0;
            foreach (var item in Array!)
                sum += item;
            return sum;
        }
    }
}

public sealed record Node(Node? Next, int Number = 0)
{
    public int Value => 1;
}
