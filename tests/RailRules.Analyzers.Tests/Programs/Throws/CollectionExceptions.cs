namespace Programs.Throws.CollectionExceptions;

/// <summary>Empty queues and stacks, and a list changed under a loop.</summary>
public static class P
{
    public static int Dequeue => new Queue<int>().Dequeue();
    public static int Pop => new Stack<int>().Pop();
    public static int Changed
    {
        get
        {
            var list = new List<int> { 1, 2 };
            foreach (var item in list)
                list.Add(item);
            return list.Count;
        }
    }
}
