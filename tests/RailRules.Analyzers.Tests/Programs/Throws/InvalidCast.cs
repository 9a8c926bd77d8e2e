namespace Programs.Throws.InvalidCast;

/// <summary>Casts to what an object is not.</summary>
public static class P
{
    private static readonly object Text = "text";
    private static readonly object Int = 5;
    private static readonly object Animal = new Cat();
    public static int ToInt => (int)Text;
    public static long UnboxToOther => (long)Int;
    public static Dog ToDog => (Dog)Animal;
    public static string ToText => (string)Int;
}

public class Cat;

public class Dog;
