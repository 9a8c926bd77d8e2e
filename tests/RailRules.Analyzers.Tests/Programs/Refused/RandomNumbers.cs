// refused: Random
namespace Programs.Refused.RandomNumbers;

/// <summary>Random numbers.</summary>
public static class P
{
    public static int Refused => new Random(1).Next(10);
}
