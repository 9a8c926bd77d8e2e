// refused: Console
namespace Programs.Refused.ConsoleOutput;

/// <summary>Writing to the console.</summary>
public static class P
{
    public static int Refused => Run();

    private static int Run()
    {
        Console.WriteLine("hello");
        return 1;
    }
}
