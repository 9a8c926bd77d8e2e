// refused: static
namespace Programs.Refused.ChangesStatic;

/// <summary>Writing a static from another member.</summary>
public static class P
{
    private static readonly int[] Shared = [1, 2];
    private static int count;
    public static int Refused => ++count;
}
