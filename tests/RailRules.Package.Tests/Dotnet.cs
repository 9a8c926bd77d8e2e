using System.Diagnostics;

namespace RailRules.Package.Tests;

/// <summary>Runs the dotnet command as a user's shell would: without what the test host put into the environment.</summary>
internal static class Dotnet
{
    public static (int ExitCode, string Output) Run(string folder, params string[] arguments)
    {
        using var process = Process.Start(Prepare(folder, arguments))!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(10)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"dotnet {string.Join(' ', arguments)} took more than ten minutes.");
        }

        process.WaitForExit();
        return (process.ExitCode, output.Result + errors.Result);
    }

    public static ProcessStartInfo Prepare(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var name in start.Environment.Keys.Where(IsOfTheTestHost).ToArray())
        {
            start.Environment.Remove(name);
        }

        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["UseSharedCompilation"] = "false";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["DOTNET_NOLOGO"] = "1";
        return start;
    }

    // NUGET_PACKAGES would win over the packages folder that the feed's NuGet.config names.
    private static bool IsOfTheTestHost(string name) =>
        name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase) || name.StartsWith("VSTEST", StringComparison.OrdinalIgnoreCase) || name is "NUGET_PACKAGES" or "CI";
}
