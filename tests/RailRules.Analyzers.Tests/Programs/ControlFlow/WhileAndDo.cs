namespace Programs.ControlFlow.WhileAndDo;

/// <summary>While and do with break and continue.</summary>
public static class P
{
    public static readonly int Collatz = Steps(27);
    public static readonly string Digits = Reverse(90210);
    public static readonly int AtLeastOnce = Once();

    private static int Steps(int n)
    {
        var steps = 0;
        while (n != 1)
        {
            n = n % 2 == 0 ? n / 2 : 3 * n + 1;
            steps++;
        }

        return steps;
    }

    private static string Reverse(int number)
    {
        var text = "";
        do
        {
            text += number % 10;
            number /= 10;
        }
        while (number > 0);
        return text;
    }

    private static int Once()
    {
        var count = 0;
        do
        {
            count++;
            if (count < 5)
                continue;
            break;
        }
        while (count < 3);
        return count;
    }
}
