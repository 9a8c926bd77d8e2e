namespace Programs.Arithmetic.BoolCompound;

/// <summary>Compound assignment on bool evaluates its right side always.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var calls = 0;
        bool Tell(bool value)
        {
            calls++;
            return value;
        }

        var flag = false;
        flag &= Tell(true);
        flag |= Tell(true);
        flag |= Tell(false);
        flag ^= Tell(true);
        return $"{flag} after {calls}";
    }
}
