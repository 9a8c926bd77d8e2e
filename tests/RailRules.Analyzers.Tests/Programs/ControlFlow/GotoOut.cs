namespace Programs.ControlFlow.GotoOut;

/// <summary>A goto that leaves two loops and a switch.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        for (var i = 0; i < 5; i++)
        {
            foreach (var c in "xyz")
            {
                switch (c)
                {
                    case 'z' when i == 2:
                        goto done;
                    case 'y':
                        continue;
                }

                log += $"{i}{c} ";
            }
        }

    done:
        return log + "done";
    }
}
