using System.Runtime.CompilerServices;

namespace Programs.Functions.CallerInformation;

/// <summary>What the compiler fills in for callers.</summary>
public static class P
{
    public static readonly string Name = Who();
    public static string Property => Who();
    public static readonly string Expression = Text(1 + 2 * 3);
    public static readonly int Line = LineOf() - LineOf();
    public static readonly string FromMethod = Method();

    private static string Method() => Who() + Lambda();

    private static string Lambda()
    {
        Func<string> f = () => Who();
        return f();
    }

    private static string Who([CallerMemberName] string? member = null) => member ?? "none";

    private static string Text(int value, [CallerArgumentExpression(nameof(value))] string? text = null) => $"{text} = {value}";

    private static int LineOf([CallerLineNumber] int line = 0) => line;
}
