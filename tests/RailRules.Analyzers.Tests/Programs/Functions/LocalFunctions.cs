namespace Programs.Functions.LocalFunctions;

/// <summary>Local functions, static, recursive, generic and mutually recursive.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        static int Factorial(int n) => n <= 1 ? 1 : n * Factorial(n - 1);
        bool Even(int n) => n == 0 || Odd(n - 1);
        bool Odd(int n) => n != 0 && Even(n - 1);
        static T Last<T>(params T[] items) => items[^1];
        static string Join<TA, TB>(TA a, TB b) => $"{a}/{b}";
        var before = Later();
        return $"{Factorial(6)} {Even(10)} {Odd(7)} {Last(1, 2, 3)} {Last("a", "b")} {Join(1, "x")} {before}";

        static string Later() => "declared below";
    }
}
