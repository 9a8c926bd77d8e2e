namespace Programs.Classes.InterfaceDiamond;

/// <summary>The most specific default member wins.</summary>
public static class P
{
    public static readonly string Result = ((ITop)new Both()).Name + ((ILeft)new Both()).Name;
    public static readonly string Struct = Describe(new Small(3));

    private static string Describe(ITop top) => top.Name;
}

public interface ITop
{
    string Name => "top";
}

public interface ILeft : ITop
{
    string ITop.Name => "left" + Mark;

    string Mark => "!";
}

public interface IRight : ITop;

public sealed class Both : ILeft, IRight
{
    public string Mark => "?";
}

public readonly struct Small(int value) : ITop
{
    public string Name => "small" + value;
}
