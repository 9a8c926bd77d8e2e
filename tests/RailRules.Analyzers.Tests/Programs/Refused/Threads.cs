// refused: 
namespace Programs.Refused.Threads;

/// <summary>Threads.</summary>
public static class P
{
    public static int Refused => Run();

    private static int Run()
    {
        var thread = new Thread(() => { });
        thread.Start();
        return 1;
    }
}
