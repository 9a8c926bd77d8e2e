namespace Programs.Throws.OwnException;

/// <summary>An exception type of the program's own.</summary>
public static class P
{
    public static int Value => throw new RatingException("F1", 20);
}

public sealed class RatingException(string part, double amperes) : Exception($"{part} is rated {amperes} A only");
