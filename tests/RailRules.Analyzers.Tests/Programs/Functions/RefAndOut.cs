namespace Programs.Functions.RefAndOut;

/// <summary>Ref, out and in parameters.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var x = 1;
        Double(ref x);
        Double(ref x);
        Split(17, out var tens, out var ones);
        Swap(ref tens, ref ones);
        var array = new[] { 1, 2, 3 };
        Double(ref array[1]);
        var box = new Box();
        Double(ref box.Field);
        Split(5, out _, out box.Field2);
        var readOnly = Sum(in x, in array[2]);
        return $"{x} {tens} {ones} {array[1]} {box.Field} {box.Field2} {readOnly} {(TryHalf(9, out var half) ? half : -1)} {(TryHalf(8, out half) ? half : -1)}";
    }

    private static void Double(ref int value) => value *= 2;

    private static void Split(int value, out int tens, out int ones)
    {
        tens = value / 10;
        ones = value % 10;
    }

    private static void Swap<T>(ref T a, ref T b) => (a, b) = (b, a);

    private static int Sum(in int a, in int b) => a + b;

    private static bool TryHalf(int value, out int half)
    {
        half = value / 2;
        return value % 2 == 0;
    }
}

public sealed class Box
{
    public int Field = 21;

    public int Field2;
}
