using System.Collections.Immutable;

namespace Programs.ControlFlow.EarlyReturns;

/// <summary>Returns out of every kind of loop.</summary>
public static class P
{
    public static readonly ImmutableArray<int> Results = [First([1, 5, 8]), First([]), Deep(3), InDo(), InSwitch(2)];

    private static int First(int[] values)
    {
        foreach (var value in values)
        {
            if (value > 4)
                return value;
        }

        return -1;
    }

    private static int Deep(int limit)
    {
        for (var i = 0; ; i++)
        {
            while (true)
            {
                if (i == limit)
                    return i * 100;
                break;
            }
        }
    }

    private static int InDo()
    {
        do
        {
            return 7;
        }
        while (true);
    }

    private static int InSwitch(int n)
    {
        while (n < 100)
        {
            switch (n % 3)
            {
                case 0:
                    return n;
                case 1:
                    n += 2;
                    continue;
                default:
                    n += 5;
                    break;
            }
        }

        return -1;
    }
}
