namespace Programs.Decimals.Mixed;

/// <summary>Int with decimal is decimal.</summary>
public static class P
{
    private static readonly int Pieces = 3;
    private static readonly decimal Price = 19.99m;
    public static readonly decimal Total = Pieces * Price;
    public static readonly decimal WithTax = Pieces * Price * 1.19m;
    public static readonly decimal Rounded = Math.Round(Pieces * Price * 1.19m, 2);
    public static readonly object Type = Pieces + 1m;
    public static readonly bool Comparison = Pieces < Price;
    public static readonly decimal Floor = decimal.Floor(-2.5m);
    public static readonly decimal Truncated = decimal.Truncate(-2.5m);
    public static readonly decimal Sum = new[] { 0.1m, 0.2m, 0.3m }.Sum();
    public static readonly decimal Average = new[] { 1m, 2m, 2m }.Average();
    public static readonly decimal Max = new[] { 1.50m, 1.5m }.Max();
}
