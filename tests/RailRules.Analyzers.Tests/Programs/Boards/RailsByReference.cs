using RailRules;

namespace Programs.Boards.RailsByReference;

/// <summary>Rails compare by reference, parts by value.</summary>
public static class P
{
    private static readonly Rail A = new() { Name = "same" };
    private static readonly Rail B = new() { Name = "same" };
    public static readonly bool Rails = A == B || A.Equals(B);
    public static readonly bool Self = A == A;
    public static readonly bool Copies = A with { } == A;
    public static readonly bool Parts = new Fuse("x") { RatedCurrent = 1.Amperes() } == new Fuse("x") { RatedCurrent = 1.Amperes() };
    public static readonly int Distinct = new[] { A, B, A }.Distinct().Count();
    public static readonly Dictionary<Rail, int> Counts = new() { [A] = 1, [B] = 2 };
    public static readonly int Found = Counts[B];
}
