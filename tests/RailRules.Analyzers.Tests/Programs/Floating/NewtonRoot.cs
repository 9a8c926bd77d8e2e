namespace Programs.Floating.NewtonRoot;

/// <summary>A root by iteration gives the same last bit.</summary>
public static class P
{
    public static readonly double Root = SquareRoot(2);
    public static readonly int Steps = Count(2);
    public static readonly double Difference = SquareRoot(3) - Math.Sqrt(3);

    private static double SquareRoot(double value)
    {
        var guess = value;
        while (true)
        {
            var next = 0.5 * (guess + value / guess);
            if (Math.Abs(next - guess) < 1e-15)
                return next;
            guess = next;
        }
    }

    private static int Count(double value)
    {
        var steps = 0;
        for (var guess = value; Math.Abs(guess * guess - value) > 1e-12; guess = 0.5 * (guess + value / guess))
            steps++;
        return steps;
    }
}
