using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Emit;
using Microsoft.CodeAnalysis.Text;
using RailRules.Analyzers;

namespace RailRules.Tool;

/// <summary>
/// Projects to compilations, from the compiler's own arguments. Of the generators only RailRules' own run: those of others are programs, and no program of the project is run.
/// </summary>
internal sealed class ProjectLoader(BuildOptions options)
{
    private const string Library = "RailRules.dll";

    private readonly ConcurrentDictionary<string, Lazy<Task<LoadedProject>>> projects = new(StringComparer.Ordinal);

    public Task<LoadedProject> LoadAsync(string project, CancellationToken cancellation) => LoadAsync(project, options, cancellation);

    private Task<LoadedProject> LoadAsync(string project, BuildOptions how, CancellationToken cancellation) =>
        projects.GetOrAdd(project + "\u0001" + how.Framework, _ => new Lazy<Task<LoadedProject>>(() => MakeAsync(project, how, cancellation))).Value;

    private async Task<LoadedProject> MakeAsync(string project, BuildOptions how, CancellationToken cancellation)
    {
        var answer = await MsBuild.AskAsync(project, how, cancellation);
        var folder = Path.GetDirectoryName(project)!;
        var arguments = CSharpCommandLineParser.Default.Parse(answer.Arguments, folder, sdkDirectory: null);
        if (arguments.SourceFiles.IsEmpty)
        {
            throw new CannotRunException($"'{project}' gives the compiler nothing to compile", "its Compile step names no C# file", "name a C# project with boards");
        }

        var intermediate = Path.GetFullPath(Path.Combine(folder, answer.Property("BaseIntermediateOutputPath") is { Length: > 0 } path ? path : "obj"));
        var sources = arguments.SourceFiles.Select(file => file.Path).Distinct(StringComparer.Ordinal).ToImmutableArray();

        // The order of the files is the build's own affair; the review shall not depend on it.
        var own = sources.Where(file => !IsWithin(file, intermediate)).OrderBy(file => Relative(folder, file), StringComparer.Ordinal).ToImmutableArray();
        var generated = sources.Where(file => IsWithin(file, intermediate)).OrderBy(file => Relative(folder, file), StringComparer.Ordinal);
        var parseOptions = arguments.ParseOptions.WithDocumentationMode(DocumentationMode.None);
        var trees = own.Concat(generated).AsParallel().AsOrdered().WithCancellation(cancellation).Select(file => CSharpSyntaxTree.ParseText(Read(file, arguments.Encoding), parseOptions, file, cancellation)).ToArray();
        var tables = arguments.AdditionalFiles.Select(file => file.Path).OrderBy(file => Relative(folder, file), StringComparer.Ordinal).Select(file => (AdditionalText)new FileText(file)).ToImmutableArray();

        var (references, others) = await ReferencesAsync(arguments, answer, how, cancellation);
        var compilation = (Compilation)CSharpCompilation.Create(
            arguments.CompilationName ?? answer.Property("AssemblyName"),
            trees,
            references,
            arguments.CompilationOptions.WithConcurrentBuild(true).WithStrongNameProvider(null).WithXmlReferenceResolver(null).WithSourceReferenceResolver(null).WithMetadataReferenceResolver(null));
        var config = new ConfigOptions(arguments.AnalyzerConfigPaths);
        var driver = CSharpGeneratorDriver.Create(Generators, tables, parseOptions, config);
        driver.RunGeneratorsAndUpdateCompilation(compilation, out compilation, out _, cancellation);
        return new LoadedProject(project, compilation, BoardSettings.Of(config.GlobalOptions), [project, .. own, .. tables.Select(table => table.Path)], others);
    }

    /// <summary>References as the compiler gets them; other projects from their source as it is now, not from what was built last.</summary>
    private async Task<(List<MetadataReference> References, List<LoadedProject> Projects)> ReferencesAsync(CSharpCommandLineArguments arguments, BuildAnswer answer, BuildOptions how, CancellationToken cancellation)
    {
        var references = new List<MetadataReference>();
        var others = new List<LoadedProject>();
        foreach (var reference in arguments.MetadataReferences)
        {
            var file = reference.Reference;
            var of = answer.References.FirstOrDefault(one => file == one.Output || file == one.ReferenceAssembly);
            if (Path.GetFileName(file) == Library)
            {
                // The library is compiled code to the evaluator, wherever it comes from.
                references.Add(MetadataReference.CreateFromFile(File.Exists(file) ? file : typeof(Rail).Assembly.Location, reference.Properties));
            }
            else if (of is not null && of.Project.EndsWith(".csproj", StringComparison.OrdinalIgnoreCase))
            {
                var other = await LoadAsync(of.Project, how with { Restore = false, Framework = of.Framework.Length > 0 ? of.Framework : null }, cancellation);
                others.Add(other);
                references.Add(other.Image(cancellation) is { } image ? MetadataReference.CreateFromImage(image, reference.Properties, filePath: file)
                    : File.Exists(file) ? MetadataReference.CreateFromFile(file, reference.Properties)
                    : throw new CannotRunException($"'{of.Project}' cannot be read", "another project takes parts from it, and its declarations do not compile", "build it with 'dotnet build' and mend what it says"));
            }
            else if (File.Exists(file))
            {
                references.Add(MetadataReference.CreateFromFile(file, reference.Properties));
            }
            else
            {
                throw new CannotRunException($"'{file}' is missing", "the project refers to it", "build what makes it, or restore the project with 'dotnet restore'");
            }
        }

        return (references, others);
    }

    private static ImmutableArray<ISourceGenerator> Generators { get; } =
    [
        .. typeof(BoardAnalyzer).Assembly.GetTypes()
            .Where(type => type is { IsAbstract: false } && typeof(IIncrementalGenerator).IsAssignableFrom(type) && type.IsDefined(typeof(GeneratorAttribute), false))
            .OrderBy(type => type.FullName, StringComparer.Ordinal)
            .Select(type => ((IIncrementalGenerator)Activator.CreateInstance(type)!).AsSourceGenerator()),
    ];

    private static bool IsWithin(string file, string folder) => file.StartsWith(folder.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    public static string Relative(string root, string file) => Path.GetRelativePath(root, file).Replace('\\', '/');

    private static SourceText Read(string file, Encoding? encoding)
    {
        using var stream = File.OpenRead(file);
        return SourceText.From(stream, encoding, SourceHashAlgorithm.Sha256);
    }

    private sealed class FileText(string path) : AdditionalText
    {
        public override string Path => path;

        public override SourceText? GetText(CancellationToken cancellationToken = default) => File.Exists(path) ? Read(path, null) : null;
    }

    private sealed class ConfigOptions : AnalyzerConfigOptionsProvider
    {
        private readonly AnalyzerConfigSet set;

        public ConfigOptions(ImmutableArray<string> files)
        {
            set = AnalyzerConfigSet.Create(files.Where(File.Exists).Select(file => AnalyzerConfig.Parse(File.ReadAllText(file), file)).ToList());
            GlobalOptions = new Values(set.GlobalConfigOptions.AnalyzerOptions);
        }

        public override AnalyzerConfigOptions GlobalOptions { get; }

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => new Values(set.GetOptionsForSourcePath(tree.FilePath).AnalyzerOptions);

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) => new Values(set.GetOptionsForSourcePath(textFile.Path).AnalyzerOptions);

        private sealed class Values(ImmutableDictionary<string, string> values) : AnalyzerConfigOptions
        {
            public override bool TryGetValue(string key, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out string? value) => values.TryGetValue(key, out value);
        }
    }
}

/// <summary>A project, ready to be evaluated.</summary>
internal sealed class LoadedProject(string path, Compilation compilation, BoardSettings settings, ImmutableArray<string> files, List<LoadedProject> others)
{
    private byte[]? image;

    /// <summary>The project file.</summary>
    public string Path { get; } = path;

    public string Folder => System.IO.Path.GetDirectoryName(Path)!;

    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    public Compilation Compilation { get; } = compilation;

    /// <summary>What its build says about judging boards.</summary>
    public BoardSettings Settings { get; } = settings;

    /// <summary>The declarations as other projects see them; null where they do not compile.</summary>
    public byte[]? Image(CancellationToken cancellation)
    {
        if (image is null)
        {
            using var stream = new MemoryStream();
            var result = Compilation.Emit(stream, options: new EmitOptions(metadataOnly: true, tolerateErrors: true), cancellationToken: cancellation);
            image = result.Success ? stream.ToArray() : null;
        }

        return image;
    }

    /// <summary>SHA-256 over project file, sources and tables, this project's and those of the projects it refers to: names and text, whatever the line ends.</summary>
    public (string Hash, int Files) Fingerprint(string root)
    {
        var all = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var pending = new Queue<LoadedProject>([this]);
        var seen = new HashSet<LoadedProject>();
        while (pending.TryDequeue(out var project))
        {
            if (seen.Add(project))
            {
                foreach (var file in project.Files.Where(File.Exists))
                {
                    all.TryAdd(ProjectLoader.Relative(root, file), file);
                }

                project.Others.ForEach(pending.Enqueue);
            }
        }

        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (name, file) in all)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(name + "\n"));
            hash.AppendData(SHA256.HashData(Encoding.UTF8.GetBytes(File.ReadAllText(file).ReplaceLineEndings("\n"))));
        }

        return (Convert.ToHexStringLower(hash.GetHashAndReset()), all.Count);
    }

    private ImmutableArray<string> Files { get; } = files;

    private List<LoadedProject> Others { get; } = others;
}
