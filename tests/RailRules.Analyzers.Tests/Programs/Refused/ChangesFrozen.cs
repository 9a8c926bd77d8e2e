// refused: 
namespace Programs.Refused.ChangesFrozen;

/// <summary>Changing what another member has made.</summary>
public static class P
{
    private static readonly List<int> Shared = [1];
    public static int Refused => Add();

    private static int Add()
    {
        Shared.Add(2);
        return Shared.Count;
    }
}
