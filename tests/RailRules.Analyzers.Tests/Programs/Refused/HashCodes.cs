// refused: GetHashCode
namespace Programs.Refused.HashCodes;

/// <summary>Hash codes.</summary>
public static class P
{
    public static int Refused => "text".GetHashCode();
}
