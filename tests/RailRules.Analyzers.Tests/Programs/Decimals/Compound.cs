using System.Collections.Immutable;

namespace Programs.Decimals.Compound;

/// <summary>Compound assignment and increments.</summary>
public static class P
{
    public static readonly ImmutableArray<decimal> Balances = Run();

    private static ImmutableArray<decimal> Run()
    {
        var builder = ImmutableArray.CreateBuilder<decimal>();
        var balance = 100.00m;
        for (var year = 1; year <= 4; year++)
        {
            balance *= 1.025m;
            balance -= 0.01m;
            builder.Add(balance);
            balance = decimal.Round(balance, 2);
        }

        balance /= 3;
        builder.Add(balance);
        balance++;
        builder.Add(balance);
        balance %= 7;
        builder.Add(balance);
        return builder.ToImmutable();
    }
}
