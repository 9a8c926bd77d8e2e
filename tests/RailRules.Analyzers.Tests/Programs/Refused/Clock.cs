// refused: Now
namespace Programs.Refused.Clock;

/// <summary>The time of day.</summary>
public static class P
{
    public static int Refused => DateTime.Now.Year;
}
