// refused: a
namespace Programs.Refused.Async;

/// <summary>Asynchronous methods.</summary>
public static class P
{
    public static int Refused => Run().Result;

    private static async Task<int> Run()
    {
        await Task.Yield();
        return 1;
    }
}
