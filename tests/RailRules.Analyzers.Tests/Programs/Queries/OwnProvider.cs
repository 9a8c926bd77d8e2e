namespace Programs.Queries.OwnProvider;

/// <summary>Query syntax over a type with its own Select, Where and SelectMany.</summary>
public static class P
{
    public static readonly Maybe<int> Sum = from a in new Maybe<int>(3) from b in new Maybe<int>(4) where b > a select a * b;
    public static readonly Maybe<int> None = from a in new Maybe<int>(3) where a > 5 select a;
    public static readonly string Text = (from a in new Maybe<string>("x") select a + "!").ToString();
}

public sealed record Maybe<T>(T? Value, bool HasValue = true)
{
    public Maybe<TOut> Select<TOut>(Func<T, TOut> how) => HasValue ? new(how(Value!)) : new(default, false);

    public Maybe<T> Where(Func<T, bool> test) => HasValue && test(Value!) ? this : new(default, false);

    public Maybe<TOut> SelectMany<TMiddle, TOut>(Func<T, Maybe<TMiddle>> next, Func<T, TMiddle, TOut> result) =>
        HasValue && next(Value!) is { HasValue: true } middle ? new(result(Value!, middle.Value!)) : new(default, false);
}
