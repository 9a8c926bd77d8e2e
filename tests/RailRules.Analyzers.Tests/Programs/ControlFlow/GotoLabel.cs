namespace Programs.ControlFlow.GotoLabel;

/// <summary>Labels as a way out of nested loops.</summary>
public static class P
{
    public static readonly string Found = Find(12);
    public static readonly string Missing = Find(13);
    public static readonly int Loop = Count();

    private static string Find(int product)
    {
        for (var a = 1; a < 5; a++)
        {
            for (var b = 1; b < 5; b++)
            {
                if (a * b == product)
                {
                    return Report(a, b);
                }

                if (a * b > product)
                    goto next;
            }

        next:;
        }

        return "none";
    }

    private static string Report(int a, int b) => $"{a}x{b}";

    private static int Count()
    {
        var n = 0;
    again:
        n++;
        if (n < 10)
            goto again;
        return n;
    }
}
