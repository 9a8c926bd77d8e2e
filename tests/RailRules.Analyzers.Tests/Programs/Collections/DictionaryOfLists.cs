namespace Programs.Collections.DictionaryOfLists;

/// <summary>Grouping by hand.</summary>
public static class P
{
    public static readonly string Text = Describe(Group(["F1", "F2", "Q1", "R5", "Q2"]));

    private static Dictionary<char, List<string>> Group(string[] designators)
    {
        var groups = new Dictionary<char, List<string>>();
        foreach (var designator in designators)
        {
            if (!groups.TryGetValue(designator[0], out var list))
                groups[designator[0]] = list = [];
            list.Add(designator);
        }

        return groups;
    }

    private static string Describe(Dictionary<char, List<string>> groups) =>
        string.Join(" ", groups.OrderBy(g => g.Key).Select(g => $"{g.Key}:{string.Join('+', g.Value)}"));
}
