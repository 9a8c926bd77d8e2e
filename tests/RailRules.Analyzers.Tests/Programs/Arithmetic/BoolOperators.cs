namespace Programs.Arithmetic.BoolOperators;

/// <summary>Logical operators evaluate both sides, conditional ones do not.</summary>
public static class P
{
    public static readonly string And = Trace((log, l, r) => log(l) & log(r), false, true);
    public static readonly string ShortAnd = Trace((log, l, r) => log(l) && log(r), false, true);
    public static readonly string Or = Trace((log, l, r) => log(l) | log(r), true, false);
    public static readonly string ShortOr = Trace((log, l, r) => log(l) || log(r), true, false);
    public static readonly string Xor = Trace((log, l, r) => log(l) ^ log(r), true, true);
    public static readonly string Not = Trace((log, l, r) => !log(l) && !log(r), false, false);

    private static string Trace(Func<Func<bool, bool>, bool, bool, bool> body, bool left, bool right)
    {
        var seen = "";
        var result = body(
            value =>
            {
                seen += value ? "T" : "F";
                return value;
            },
            left,
            right);
        return $"{seen}={result}";
    }
}
