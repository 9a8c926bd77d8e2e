// refused: 
namespace Programs.Refused.Stackalloc;

/// <summary>Memory on the stack.</summary>
public static class P
{
    public static int Refused => Run();

    private static int Run()
    {
        Span<int> span = stackalloc int[3];
        span[0] = 5;
        return span[0];
    }
}
