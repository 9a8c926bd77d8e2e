// refused: catch
using System.Globalization;

namespace Programs.Refused.TryCatch;

/// <summary>Catch blocks.</summary>
public static class P
{
    public static int Refused => Run();

    private static int Run()
    {
        try
        {
            return int.Parse("x", CultureInfo.InvariantCulture);
        }
        catch (FormatException)
        {
            return -1;
        }
    }
}
