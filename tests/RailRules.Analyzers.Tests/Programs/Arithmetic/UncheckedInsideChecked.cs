namespace Programs.Arithmetic.UncheckedInsideChecked;

/// <summary>The innermost context decides, and a called method has its own.</summary>
public static class P
{
    private static readonly int Max = int.MaxValue;
    public static readonly int Inner = checked(unchecked(Max + 1) + 1);
    public static readonly int Called = checked(AddOne(Max) + 1);
    public static readonly int Block = Mixed(Max);
    public static readonly int Lambda = Through(Max);

    private static int AddOne(int value) => value + 1;

    private static int Mixed(int value)
    {
        checked
        {
            unchecked
            {
                value += 10;
            }

            return value + 20;
        }
    }

    private static int Through(int value)
    {
        Func<int, int> next = unchecked((int x) => x * 2);
        return checked(next(value) + 2);
    }
}
