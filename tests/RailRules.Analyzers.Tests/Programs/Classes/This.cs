namespace Programs.Classes.This;

/// <summary>Fluent methods that return this, and indexers through this.</summary>
public static class P
{
    public static readonly string Text = new Builder().Add("a").Add("b").Twice().Build();
}

public sealed class Builder
{
    private readonly List<string> parts = [];

    public Builder Add(string part)
    {
        parts.Add(part);
        return this;
    }

    public Builder Twice()
    {
        parts.AddRange(parts.ToArray());
        return this;
    }

    public string Build() => string.Join('.', parts);
}
