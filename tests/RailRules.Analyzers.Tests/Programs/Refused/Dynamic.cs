// refused: dynamic
namespace Programs.Refused.Dynamic;

/// <summary>Dynamic calls.</summary>
public static class P
{
    public static object Refused => Add(1, 2);

    private static object Add(dynamic a, dynamic b) => a + b;
}
