namespace Programs.Records.Positional;

/// <summary>Positional records, their properties, deconstruction and text.</summary>
public static class P
{
    private static readonly Part F = new("F1", 20, 80.5);
    public static readonly Part Made = F;
    public static readonly string Text = F.ToString();
    public static readonly string Name = F.Name;
    public static readonly string Deconstructed = Take(F);
    public static readonly bool Equal = F == new Part("F1", 20, 80.5);
    public static readonly bool NotEqual = F != new Part("F2", 20, 80.5);
    public static readonly bool ByEquals = F.Equals((object)new Part("F1", 20, 80.5));
    public static readonly bool Reference = ReferenceEquals(F, new Part("F1", 20, 80.5));

    private static string Take(Part part)
    {
        var (name, rated, _) = part;
        return name + rated;
    }
}

public sealed record Part(string Name, int Rated, double Volts);
