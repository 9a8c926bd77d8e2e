// refused: this changes a struct in its box
namespace Programs.Refused.BoxedStructs;

/// <summary>A method called through an interface changes the struct in its box, which others may hold.</summary>
public static class P
{
    public static readonly int Refused = Run();

    private static int Run()
    {
        IUp boxed = new Counter();
        boxed.Up();
        return boxed.Up();
    }
}

public interface IUp
{
    int Up();
}

public struct Counter : IUp
{
    private int value;

    public int Up() => ++value;
}
