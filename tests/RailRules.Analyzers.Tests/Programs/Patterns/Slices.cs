namespace Programs.Patterns.Slices;

/// <summary>Slice patterns bind pieces of the collection's type.</summary>
public static class P
{
    public static readonly string Command = Parse("set F1 rated 10");
    public static readonly string Unknown = Parse("open");
    public static readonly string Last = Parse("get F1 rated");
    public static readonly int Sum = Total([1, 2, 3, 4]);
    public static readonly string TextSlice = "[inner]" is ['[', .. var inside, ']'] ? inside : "none";
    public static readonly bool Type = new[] { 1, 2, 3 } is [_, .. int[] { Length: 2 }];

    private static string Parse(string line) => line.Split(' ') switch
    {
        ["set", var name, .. var words] => $"{name} <- {string.Join('/', words)}",
        [.., "rated"] => "question",
        [var verb] => "verb " + verb,
        _ => "?",
    };

    private static int Total(int[] values) => values is [var head, .. var tail] ? head + Total(tail) : 0;
}
