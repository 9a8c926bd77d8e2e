// refused: reflection
namespace Programs.Refused.Reflection;

/// <summary>Types as objects.</summary>
public static class P
{
    public static string Refused => typeof(List<int>).Name;
}
