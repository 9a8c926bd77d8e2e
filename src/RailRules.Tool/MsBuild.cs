using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace RailRules.Tool;

/// <summary>Asks MSBuild what it would give the compiler. Nothing is compiled.</summary>
internal static class MsBuild
{
    /// <summary>What a project would be compiled with.</summary>
    public static async Task<BuildAnswer> AskAsync(string project, BuildOptions options, CancellationToken cancellation)
    {
        var framework = options.Framework;
        if (framework is null)
        {
            // A project for several frameworks has no compile step of its own.
            var plain = await RunAsync(project, ["-getProperty:TargetFramework", "-getProperty:TargetFrameworks", .. options.Properties], cancellation);
            if (plain.Property("TargetFramework").Length == 0 && plain.Property("TargetFrameworks").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) is [var first, ..])
            {
                framework = first;
            }
        }

        List<string> arguments =
        [
            "-t:Compile",
            "-p:ProvideCommandLineArgs=true",
            "-p:SkipCompilerExecution=true",
            "-p:DesignTimeBuild=true",
            "-p:BuildProjectReferences=false",
            "-p:NonExistentFile=__none__/__none__",
            .. framework is null ? (IEnumerable<string>)[] : ["-p:TargetFramework=" + framework],
            .. options.Properties,
            "-getItem:CscCommandLineArgs",
            "-getItem:_ResolvedProjectReferencePaths",
            "-getProperty:BaseIntermediateOutputPath",
            "-getProperty:AssemblyName",
        ];
        if (options.Restore)
        {
            arguments.Insert(0, "-restore");
        }

        return await RunAsync(project, arguments, cancellation);
    }

    private static async Task<BuildAnswer> RunAsync(string project, IReadOnlyList<string> arguments, CancellationToken cancellation)
    {
        var answer = Path.Combine(Path.GetTempPath(), "railrules-" + Guid.NewGuid().ToString("N") + ".json");
        try
        {
            var (code, output) = await DotnetAsync(["msbuild", project, "-nologo", "-v:q", "-nodeReuse:false", "-getResultOutputFile:" + answer, .. arguments], Path.GetDirectoryName(project)!, cancellation);
            if (code != 0 || !File.Exists(answer))
            {
                throw new CannotRunException($"MSBuild cannot prepare '{project}'", Errors(output), "build the project once with 'dotnet build' and mend what it says, or name another project");
            }

            await using var stream = File.OpenRead(answer);
            using var json = await JsonDocument.ParseAsync(stream, cancellationToken: cancellation);
            return BuildAnswer.Read(json.RootElement);
        }
        finally
        {
            File.Delete(answer);
        }
    }

    /// <summary>Runs the SDK's command; exit code and all that it printed.</summary>
    public static async Task<(int Code, string Output)> DotnetAsync(IEnumerable<string> arguments, string folder, CancellationToken cancellation)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet", arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            UseShellExecute = false,
        };
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["MSBUILDTERMINALLOGGER"] = "off";

        // A tool that dotnet started hands down where its MSBuild lies; the project's own SDK shall decide.
        foreach (var inherited in new[] { "MSBuildSDKsPath", "MSBuildExtensionsPath", "MSBUILD_EXE_PATH", "MSBuildLoadMicrosoftTargetsReadOnly" })
        {
            start.Environment.Remove(inherited);
        }

        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception exception)
        {
            throw new CannotRunException("The .NET SDK cannot be started", exception.Message, "install the .NET SDK and put 'dotnet' on the PATH");
        }

        using (process)
        {
            process.StandardInput.Close();
            var text = new StringBuilder();
            var reading = Task.WhenAll(CollectAsync(process.StandardOutput, text), CollectAsync(process.StandardError, text));
            try
            {
                await process.WaitForExitAsync(cancellation);
                await reading;
            }
            catch (OperationCanceledException)
            {
                process.Kill(entireProcessTree: true);
                throw;
            }

            return (process.ExitCode, text.ToString());
        }
    }

    private static async Task CollectAsync(StreamReader reader, StringBuilder text)
    {
        while (await reader.ReadLineAsync() is { } line)
        {
            lock (text)
            {
                text.AppendLine(line);
            }
        }
    }

    private static string Errors(string output)
    {
        var lines = output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var errors = lines.Where(line => line.Contains("error", StringComparison.OrdinalIgnoreCase)).Distinct().Take(5).ToList();
        return errors.Count > 0 ? string.Join("; ", errors) : lines.Length > 0 ? string.Join("; ", lines.TakeLast(3)) : "it said nothing";
    }
}

/// <summary>How a project is asked for.</summary>
/// <param name="Configuration">The configuration; null: the project's default.</param>
/// <param name="Framework">The target framework; null: the project's, or its first.</param>
/// <param name="Restore">Whether packages are restored first.</param>
/// <param name="Given">Further properties, as NAME=VALUE.</param>
internal sealed record BuildOptions(string? Configuration, string? Framework, bool Restore, IReadOnlyList<string>? Given = null)
{
    public IEnumerable<string> Properties =>
    [
        .. Configuration is null ? (IEnumerable<string>)[] : ["-p:Configuration=" + Configuration],

        // MSBuild would take a list for several properties.
        .. (Given ?? []).Select(property => "-p:" + property.Replace("%", "%25", StringComparison.Ordinal).Replace(";", "%3B", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal)),
    ];
}

/// <summary>MSBuild's answer.</summary>
internal sealed class BuildAnswer
{
    private readonly Dictionary<string, string> properties = new(StringComparer.Ordinal);

    public List<string> Arguments { get; } = [];

    public List<ProjectReference> References { get; } = [];

    public string Property(string name) => properties.GetValueOrDefault(name, "");

    public static BuildAnswer Read(JsonElement root)
    {
        var answer = new BuildAnswer();
        if (root.TryGetProperty("Properties", out var properties))
        {
            foreach (var property in properties.EnumerateObject())
            {
                answer.properties[property.Name] = property.Value.GetString() ?? "";
            }
        }

        if (root.TryGetProperty("Items", out var items))
        {
            foreach (var argument in Items(items, "CscCommandLineArgs"))
            {
                answer.Arguments.Add(Text(argument, "Identity"));
            }

            foreach (var reference in Items(items, "_ResolvedProjectReferencePaths"))
            {
                answer.References.Add(new ProjectReference(
                    Text(reference, "FullPath"),
                    Text(reference, "ReferenceAssembly"),
                    Text(reference, "MSBuildSourceProjectFile"),
                    Text(reference, "NearestTargetFramework")));
            }
        }

        return answer;
    }

    private static IEnumerable<JsonElement> Items(JsonElement items, string name) => items.TryGetProperty(name, out var list) ? list.EnumerateArray() : [];

    private static string Text(JsonElement item, string name) => item.TryGetProperty(name, out var value) ? value.GetString() ?? "" : "";
}

/// <summary>A reference to another project.</summary>
internal sealed record ProjectReference(string Output, string ReferenceAssembly, string Project, string Framework);
