namespace Programs.Functions.YCombinator;

/// <summary>Recursion through lambdas.</summary>
public static class P
{
    public static readonly int Factorial = Run();
    public static readonly long Fixed = Fix<int, long>(self => n => n < 2 ? n : self(n - 1) + self(n - 2))(15);

    private static int Run()
    {
        Func<int, int> factorial = null!;
        factorial = n => n <= 1 ? 1 : n * factorial(n - 1);
        return factorial(10);
    }

    private static Func<TA, TR> Fix<TA, TR>(Func<Func<TA, TR>, Func<TA, TR>> f) => x => f(Fix(f))(x);
}
