namespace Programs.Functions.LambdaForms;

/// <summary>Statement bodies, natural types, default and typed parameters, discards.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var natural = (int x, int y) => x + y;
        var withDefault = (int x, int y = 10) => x * y;
        var explicitReturn = long (int x) => x;
        Func<int, int, int> discards = (_, _) => 42;
        Func<int> statements = () =>
        {
            var sum = 0;
            for (var i = 0; i < 4; i++)
                sum += i;
            return sum;
        };
        var parameters = (params int[] values) => values.Length;
        return $"{natural(1, 2)} {withDefault(3)} {withDefault(3, 4)} {explicitReturn(5)} {discards(1, 2)} {statements()} {parameters(1, 2, 3)}";
    }
}
