namespace Programs.Classes.Nested;

/// <summary>Nested classes with access to private members of the outer one.</summary>
public static class P
{
    public static readonly string Result = new Outer(7).Make().Describe();
}

public sealed class Outer(int secret)
{
    private const string Prefix = "s";

    private readonly int secret = secret;

    public Inner Make() => new(this);

    public sealed class Inner
    {
        private readonly Outer outer;

        internal Inner(Outer outer) => this.outer = outer;

        public string Describe() => Prefix + outer.secret + new Deep<string>("d").Value;

        private sealed record Deep<T>(T Value);
    }
}
