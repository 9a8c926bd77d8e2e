namespace Programs.Arithmetic.Increments;

/// <summary>Prefix and postfix on locals of every numeric type.</summary>
public static class P
{
    public static readonly string Ints = Int();
    public static readonly string Bytes = Byte();
    public static readonly string Doubles = Double();
    public static readonly string Decimals = Decimal();
    public static readonly string Chars = Char();

    private static string Int()
    {
        var x = 5;
        var y = x++ + ++x;
        return $"{x} {y} {x--} {--x}";
    }

    private static string Byte()
    {
        byte x = 254;
        x++;
        x++;
        return $"{x} {--x} {x++} {x}";
    }

    private static string Double()
    {
        var x = 0.1;
        var y = x++;
        return $"{x:R} {y:R} {--x:R}";
    }

    private static string Decimal()
    {
        var x = 1.10m;
        return $"{x++} {++x} {x--} {x}";
    }

    private static string Char()
    {
        var c = 'a';
        c++;
        return $"{c++}{c}{--c}";
    }
}
