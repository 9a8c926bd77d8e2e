// refused: culture
namespace Programs.Refused.CultureOrder;

/// <summary>The order of texts in the culture of the machine.</summary>
public static class P
{
    public static string Refused => string.Concat(new[] { "b", "a" }.Order());
}
