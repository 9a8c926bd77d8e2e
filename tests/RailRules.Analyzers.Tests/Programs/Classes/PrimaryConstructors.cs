namespace Programs.Classes.PrimaryConstructors;

/// <summary>Parameters captured, used once, and passed on.</summary>
public static class P
{
    private static readonly Account A = new("main", 100);
    public static readonly decimal Balance = Run();
    public static readonly string Name = A.Name;
    public static readonly string Derived = new Savings("s", 50, 0.02m).Describe();
    public static readonly int Struct = new Vector(3, 4).Square;

    private static decimal Run()
    {
        var account = new Account("x", 10);
        account.Deposit(5);
        account.Deposit(2.50m);
        return account.Balance;
    }
}

public class Account(string name, decimal balance)
{
    public string Name { get; } = name.ToUpperInvariant();

    public decimal Balance => balance;

    public void Deposit(decimal amount) => balance += amount;
}

public sealed class Savings(string name, decimal balance, decimal rate) : Account(name, balance)
{
    public string Describe() => $"{Name} {Balance * (1 + rate)} {rate}";
}

public readonly struct Vector(int x, int y)
{
    public int Square => x * x + y * y;
}
