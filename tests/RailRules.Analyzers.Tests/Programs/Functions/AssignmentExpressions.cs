namespace Programs.Functions.AssignmentExpressions;

/// <summary>Assignments have values.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        int a, b, c;
        a = b = c = 4;
        var d = (a += 2) * (b -= 1);
        long wide = c = 7;
        string? text;
        if ((text = Next()) != null)
            text += "!";
        while ((a = a / 2) > 0)
            b++;
        return $"{a} {b} {c} {d} {wide} {text}";
    }

    private static string? Next() => "next";
}
