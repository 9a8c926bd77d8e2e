namespace RailRules.Analyzers.Tests;

/// <summary>A long test that runs when the environment says RAILRULES_NIGHTLY=1, and is shown as skipped otherwise.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NightlyFactAttribute : FactAttribute
{
    public NightlyFactAttribute()
    {
        if (Environment.GetEnvironmentVariable("RAILRULES_NIGHTLY") != "1")
        {
            Skip = "Long; set RAILRULES_NIGHTLY=1 to run it.";
        }
    }
}
