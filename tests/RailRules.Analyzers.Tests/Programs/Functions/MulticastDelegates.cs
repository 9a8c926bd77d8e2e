namespace Programs.Functions.MulticastDelegates;

/// <summary>Plus and minus on delegates.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        Action a = () => log += "a";
        Action b = () => log += "b";
        var both = a + b;
        both();
        both += a;
        both();
        both -= a;
        both?.Invoke();
        Func<int> last = () => 1;
        last += () => 2;
        return log + last();
    }
}
