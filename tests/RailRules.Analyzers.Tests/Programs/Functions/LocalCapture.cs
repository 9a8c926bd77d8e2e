namespace Programs.Functions.LocalCapture;

/// <summary>Local functions share the variables they capture.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var count = 0;
        var log = "";
        void Add(string text)
        {
            count++;
            log += text;
            if (count < 3)
                Add(text + count);
        }

        Add("x");
        int Outer(int a)
        {
            int Inner(int b)
            {
                count += b;
                return a * 10 + b;
            }

            return Inner(1) + Inner(2);
        }

        return $"{Outer(5)} {log} {count}";
    }
}
