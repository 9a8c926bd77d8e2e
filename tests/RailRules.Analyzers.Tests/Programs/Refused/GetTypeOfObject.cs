// refused: GetType
namespace Programs.Refused.GetTypeOfObject;

/// <summary>The type of an object.</summary>
public static class P
{
    public static string Refused => 5.GetType().Name;
}
