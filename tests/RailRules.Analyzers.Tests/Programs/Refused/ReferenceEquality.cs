// refused: boxed values are compared by reference
namespace Programs.Refused.ReferenceEquality;

/// <summary>Each use of a value as an object makes a box of its own.</summary>
public static class P
{
    private static readonly int One = 1;
    public static readonly bool Refused = ReferenceEquals(One, One);
    public static readonly bool Lists = ReferenceEquals(new List<int>(), new List<int>());
}
