namespace Programs.Classes.LinkedList;

/// <summary>Objects that point at each other, also round in a ring.</summary>
public static class P
{
    public static readonly string Text = Build();
    public static readonly int Ring = Walk();

    private static string Build()
    {
        Node? head = null;
        foreach (var n in new[] { 3, 2, 1 })
            head = new Node(n) { Next = head };
        Node? reversed = null;
        while (head is not null)
            (head.Next, reversed, head) = (reversed, head, head.Next);
        var text = "";
        for (var at = reversed; at is not null; at = at.Next)
            text += at.Value;
        return text;
    }

    private static int Walk()
    {
        var a = new Node(1);
        var b = new Node(2) { Next = a };
        a.Next = b;
        var at = a;
        var sum = 0;
        for (var i = 0; i < 7; i++)
        {
            sum = sum * 2 + at.Value;
            at = at.Next!;
        }

        return sum;
    }
}

public sealed class Node(int value)
{
    public int Value => value;

    public Node? Next { get; set; }
}
