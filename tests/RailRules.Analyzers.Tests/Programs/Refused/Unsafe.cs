// refused: 
namespace Programs.Refused.Unsafe;

/// <summary>Pointers.</summary>
public static class P
{
    public static unsafe int Refused => Run();

    private static unsafe int Run()
    {
        var x = 5;
        var p = &x;
        return *p;
    }
}
