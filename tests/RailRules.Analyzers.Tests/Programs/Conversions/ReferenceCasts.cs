namespace Programs.Conversions.ReferenceCasts;

/// <summary>Casts up and down a hierarchy.</summary>
public static class P
{
    private static readonly Animal Pet = new Dog("Rex");
    public static readonly string Down = ((Dog)Pet).Name;
    public static readonly bool IsCat = Pet is Cat;
    public static readonly string? AsCat = (Pet as Cat)?.Purr;
    public static readonly string Through = ((INamed)Pet).Name;
    public static readonly string Pattern = Pet is Dog { Name: var name } ? name : "none";
    public static readonly int Count = new Animal[] { Pet, new Cat("Tom"), new Dog("Ada") }.OfType<Dog>().Count();
    public static readonly string Cast = string.Join("+", new object[] { "a", "b" }.Cast<string>());
}

public interface INamed
{
    string Name { get; }
}

public abstract class Animal(string name) : INamed
{
    public string Name => name;
}

public sealed class Dog(string name) : Animal(name);

public sealed class Cat(string name) : Animal(name)
{
    public string Purr => Name + " purrs";
}
