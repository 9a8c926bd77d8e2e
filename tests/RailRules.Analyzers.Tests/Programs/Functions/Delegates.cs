namespace Programs.Functions.Delegates;

/// <summary>Own delegate types, combining and invoking.</summary>
public static class P
{
    public static readonly string Result = Run();
    public static readonly double Area = new Formula((a, b) => a * b)(2, 3.5);

    private static string Run()
    {
        var log = "";
        Notify one = s => log += "1" + s;
        Notify two = s => log += "2" + s;
        one("a");
        two("b");
        Notify? none = null;
        none?.Invoke("c");
        Notify chosen = log.Length > 3 ? one : two;
        chosen("d");
        return log;
    }
}

public delegate void Notify(string text);

public delegate double Formula(double a, double b);
