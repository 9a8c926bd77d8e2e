namespace Programs.Collections.QueuesAndStacks;

/// <summary>First in first out, last in first out.</summary>
public static class P
{
    public static readonly string Queue = RunQueue();
    public static readonly string Stack = RunStack();
    public static readonly bool Balanced = IsBalanced("([]{})") && !IsBalanced("([)]");

    private static string RunQueue()
    {
        var queue = new Queue<int>();
        queue.Enqueue(1);
        queue.Enqueue(2);
        queue.Enqueue(3);
        var first = queue.Dequeue();
        queue.Enqueue(4);
        return $"{first} {queue.Peek()} {queue.Count} {string.Join(',', queue)}";
    }

    private static string RunStack()
    {
        var stack = new Stack<string>(["a", "b"]);
        stack.Push("c");
        var top = stack.Pop();
        return $"{top} {stack.Peek()} {stack.Count} {string.Join(',', stack)} {stack.TryPop(out var next)} {next}";
    }

    private static bool IsBalanced(string text)
    {
        var open = new Stack<char>();
        foreach (var c in text)
        {
            if (c is '(' or '[' or '{')
                open.Push(c);
            else if (open.Count == 0 || (open.Pop(), c) is not (('(', ')') or ('[', ']') or ('{', '}')))
                return false;
        }

        return open.Count == 0;
    }
}
