namespace Programs.Functions.ArgumentOrder;

/// <summary>Arguments are evaluated as they stand, named or not.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        int T(int value)
        {
            log += value;
            return value;
        }

        int F(int a, int b, int c = 7) => a * 100 + b * 10 + c;
        var first = F(c: T(3), a: T(1), b: T(2));
        var second = F(T(4), c: T(5), b: T(6));
        var third = T(1) + T(2) * T(3) - T(4);
        var i = 0;
        var fourth = F(i++, i++, i++);
        var fifth = F(i, i = 9, i);
        return $"{log} {first} {second} {third} {fourth} {fifth}";
    }
}
