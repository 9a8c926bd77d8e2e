namespace Programs.Arrays.Sorting;

/// <summary>Insertion sort, bubble sort and the library's order agree.</summary>
public static class P
{
    private static readonly int[] Input = [5, 2, 9, 2, -1, 7];
    public static readonly int[] Insertion = InsertionSort([.. Input]);
    public static readonly int[] Bubble = BubbleSort([.. Input]);
    public static readonly int[] Library = [.. Input.Order()];
    public static readonly bool Same = Insertion.SequenceEqual(Library) && Bubble.SequenceEqual(Library);

    private static int[] InsertionSort(int[] values)
    {
        for (var i = 1; i < values.Length; i++)
        {
            var value = values[i];
            var j = i - 1;
            while (j >= 0 && values[j] > value)
            {
                values[j + 1] = values[j];
                j--;
            }

            values[j + 1] = value;
        }

        return values;
    }

    private static int[] BubbleSort(int[] values)
    {
        bool swapped;
        do
        {
            swapped = false;
            for (var i = 0; i + 1 < values.Length; i++)
            {
                if (values[i] > values[i + 1])
                {
                    (values[i], values[i + 1]) = (values[i + 1], values[i]);
                    swapped = true;
                }
            }
        }
        while (swapped);
        return values;
    }
}
