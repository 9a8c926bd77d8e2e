// refused: lock
namespace Programs.Refused.Lock;

/// <summary>Lock statements.</summary>
public static class P
{
    private static readonly object Gate = new();
    public static int Refused => Run();

    private static int Run()
    {
        lock (Gate)
        {
            return 1;
        }
    }
}
