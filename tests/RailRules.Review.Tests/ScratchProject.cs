using RailRules.Tool;

namespace RailRules.Review.Tests;

/// <summary>A project of its own in an empty folder, as a new user has one; the library comes from this repository's build instead of from the package.</summary>
internal sealed class ScratchProject : IDisposable
{
    public ScratchProject(string name = "Shelf", string properties = "")
    {
        Folder = Directory.CreateTempSubdirectory("rail rules ").FullName;
        File = Add(name, properties);
    }

    public string Folder { get; }

    /// <summary>The project file.</summary>
    public string File { get; }

    /// <summary>The sample Lockhouse, which holds in all its checks.</summary>
    public static string Lockhouse { get; } = Sample("LockhouseShelf.cs");

    /// <summary>The same with too much load for the fuse of each sled: RAIL0201.</summary>
    public static string TooSmall { get; } = Lockhouse.Replace("600.Watts()", "750.Watts()", StringComparison.Ordinal);

    /// <summary>The parts of the sample.</summary>
    public static string Parts { get; } = Sample("Parts.cs");

    /// <summary>Adds a project to the folder.</summary>
    public string Add(string name, string properties = "")
    {
        var file = Write(Path.Combine(name, name + ".csproj"), $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <TargetFramework>net10.0</TargetFramework>
                <Nullable>enable</Nullable>
                <ImplicitUsings>enable</ImplicitUsings>
                {properties}
              </PropertyGroup>
              <Import Project="{Path.Combine(Repository.Root, "src", "RailRules.Package", "build", "RailRules.props")}" />
              <ItemGroup>
                <Reference Include="{typeof(Rail).Assembly.Location}" />
                <Reference Include="{typeof(UnitsNet.Length).Assembly.Location}" />
              </ItemGroup>
            </Project>
            """);
        return file;
    }

    public string Write(string name, string text)
    {
        var file = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        System.IO.File.WriteAllText(file, text);
        return file;
    }

    /// <summary>Writes the sources of the sample, with a board of its own.</summary>
    public ScratchProject With(string board, string project = "Shelf")
    {
        Write(Path.Combine(project, "Board.cs"), board);
        Write(Path.Combine(project, "Parts.cs"), Parts);
        return this;
    }

    /// <summary>Runs 'railrules review'.</summary>
    public Task<Ran> ReviewAsync(params string[] arguments) => RunAsync(["review", File, "--output", Output, .. arguments]);

    /// <summary>The folder of the reviews.</summary>
    public string Output => Path.Combine(Folder, "out");

    public static async Task<Ran> RunAsync(params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = await Commands.RunAsync(arguments, output, error);
        return new Ran(code, output.ToString(), error.ToString());
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string Sample(string file) => System.IO.File.ReadAllText(Path.Combine(Repository.Root, "samples", "Lockhouse", file));
}

/// <summary>What a run of the command did.</summary>
internal sealed record Ran(int Code, string Output, string Error)
{
    public Ran Ends(int code)
    {
        Assert.True(Code == code, $"exit code {Code} instead of {code}\n{Output}\n{Error}");
        return this;
    }
}
