namespace Programs.Classes.Operators;

/// <summary>Operators of every kind on a user type.</summary>
public static class P
{
    private static readonly Vec A = new(1, 2);
    private static readonly Vec B = new(3, -1);
    public static readonly Vec Sum = A + B;
    public static readonly Vec Difference = A - B;
    public static readonly Vec Negated = -A;
    public static readonly Vec Scaled = 2 * A * 0.5;
    public static readonly double Dot = A * B;
    public static readonly bool Equal = A == B || A != B;
    public static readonly Vec Compound = Run();
    public static readonly bool Truth = A ? true : false;
    public static readonly Vec Both = A & B;
    public static readonly bool Greater = A > B;
    public static readonly Vec Shifted = A << 2;
    public static readonly double Length = (double)new Vec(3, 4);
    public static readonly Vec FromTuple = (5.0, 6.0);

    private static Vec Run()
    {
        var v = A;
        v += B;
        v *= 3;
        v++;
        var old = v++;
        --v;
        return v + old;
    }
}

public readonly record struct Vec(double X, double Y)
{
    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y);

    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y);

    public static Vec operator -(Vec a) => new(-a.X, -a.Y);

    public static Vec operator *(Vec a, double k) => new(a.X * k, a.Y * k);

    public static Vec operator *(double k, Vec a) => a * k;

    public static double operator *(Vec a, Vec b) => a.X * b.X + a.Y * b.Y;

    public static Vec operator ++(Vec a) => new(a.X + 1, a.Y + 1);

    public static Vec operator --(Vec a) => new(a.X - 1, a.Y - 1);

    public static bool operator true(Vec a) => a.X > 0;

    public static bool operator false(Vec a) => a.X <= 0;

    public static Vec operator &(Vec a, Vec b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y));

    public static bool operator >(Vec a, Vec b) => (double)a > (double)b;

    public static bool operator <(Vec a, Vec b) => (double)a < (double)b;

    public static Vec operator <<(Vec a, int by) => new(a.X * (1 << by), a.Y);

    public static explicit operator double(Vec a) => Math.Sqrt(a * a);

    public static implicit operator Vec((double X, double Y) pair) => new(pair.X, pair.Y);
}
