// refused: NewGuid
namespace Programs.Refused.Guids;

/// <summary>Identities out of nothing.</summary>
public static class P
{
    public static string Refused => Guid.NewGuid().ToString();
}
