namespace Programs.Nullables.CoalescingAssignment;

/// <summary>??= on locals, fields, properties and elements.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var calls = 0;
        int Make()
        {
            calls++;
            return calls * 10;
        }

        int? local = null;
        local ??= Make();
        local ??= Make();
        var box = new Box();
        box.Name ??= "first";
        box.Name ??= "second";
        box.Items ??= [1];
        box.Items.Add(2);
        var texts = new string?[2];
        texts[1] ??= "x";
        texts[1] ??= "y";
        int value = local ??= Make();
        return $"{local} {value} {calls} {box.Name} {box.Items.Count} {texts[0] ?? "-"}{texts[1]}";
    }
}

public sealed class Box
{
    public string? Name { get; set; }

    public List<int>? Items;
}
