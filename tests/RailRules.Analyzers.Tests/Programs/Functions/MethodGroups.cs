namespace Programs.Functions.MethodGroups;

/// <summary>Methods as delegates, static, of an instance and from the library.</summary>
public static class P
{
    public static readonly string Static = string.Join(',', new[] { 1, 2 }.Select(Twice));
    public static readonly string Library = string.Join(',', new[] { 1.4, 2.6 }.Select(Math.Floor));
    public static readonly string Instance = string.Join(',', new[] { 1, 2 }.Select(new Scaler(7).Scale));
    public static readonly string Extension = string.Join(',', new[] { "a", "b" }.Select(Loud));
    public static readonly double Invoked = Call(Math.Max, 3, 4);
    public static readonly int ByInvoke = new Func<int, int>(Twice).Invoke(21);
    public static readonly bool Overload = new[] { "x" }.All(char.IsLetter);

    private static int Twice(int value) => 2 * value;

    private static string Loud(string value) => value + "!";

    private static bool All(this string[] texts, Func<char, bool> test) => texts.All(t => t.All(test));

    private static double Call(Func<double, double, double> f, double a, double b) => f(a, b);
}

public sealed class Scaler(int factor)
{
    public int Scale(int value) => value * factor;
}
