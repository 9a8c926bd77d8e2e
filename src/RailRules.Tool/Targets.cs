namespace RailRules.Tool;

/// <summary>What the user named to the projects that it means.</summary>
internal static class Targets
{
    /// <summary>The projects of a project file, a solution or a folder, by full path.</summary>
    public static async Task<IReadOnlyList<string>> OfAsync(string path, CancellationToken cancellation)
    {
        var full = Path.GetFullPath(path);
        if (Directory.Exists(full))
        {
            full = InFolder(full);
        }
        else if (!File.Exists(full))
        {
            throw new CannotRunException($"There is no '{path}'", "neither a file nor a folder has that name", "name a project (.csproj), a solution (.sln, .slnx) or the folder of one");
        }

        switch (Path.GetExtension(full).ToLowerInvariant())
        {
            case ".csproj":
                return [full];
            case ".sln" or ".slnx" or ".slnf":
                var folder = Path.GetDirectoryName(full)!;
                var (code, output) = await MsBuild.DotnetAsync(["sln", full, "list"], folder, cancellation);
                var projects = output.Split('\n', StringSplitOptions.TrimEntries).Where(line => line.EndsWith(".csproj", StringComparison.OrdinalIgnoreCase)).Select(line => Path.GetFullPath(Path.Combine(folder, line.Replace('\\', Path.DirectorySeparatorChar)))).Order(StringComparer.Ordinal).ToList();
                return code == 0 && projects.Count > 0
                    ? projects
                    : throw new CannotRunException($"'{path}' gives no C# project", code == 0 ? "the solution lists none" : output.Trim(), "name a solution with C# projects, or a project");
            default:
                throw new CannotRunException($"'{path}' is neither a project nor a solution", "its name ends otherwise", "name a project (.csproj), a solution (.sln, .slnx) or the folder of one");
        }
    }

    private static string InFolder(string folder)
    {
        foreach (var pattern in new[] { "*.slnx", "*.sln", "*.csproj" })
        {
            var found = Directory.GetFiles(folder, pattern).Order(StringComparer.Ordinal).ToList();
            if (found.Count == 1)
            {
                return found[0];
            }

            if (found.Count > 1)
            {
                throw new CannotRunException($"'{folder}' has several candidates", string.Join(", ", found.Select(Path.GetFileName)), "name one of them");
            }
        }

        throw new CannotRunException($"'{folder}' has no project", "neither a .slnx, a .sln nor a .csproj lies there", "name a project or solution, or change to its folder");
    }
}
