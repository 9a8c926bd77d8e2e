using System.Collections.Immutable;
using System.Reflection;
using Basic.Reference.Assemblies;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers.Tests.Programs;

/// <summary>One program: a file <c>Programs/Topic/Name.cs</c> with <c>Programs.Topic.Name.P</c>, whose public static members are the results.</summary>
/// <param name="Id">Topic and name, e.g. <c>Arithmetic/WrapAround</c>.</param>
/// <param name="Tree">The parsed file.</param>
internal sealed record ProgramFile(string Id, SyntaxTree Tree)
{
    private const string RefusedMark = "// refused: ";

    public string Topic => Id[..Id.IndexOf('/', StringComparison.Ordinal)];

    public string TypeName => "Programs." + Id.Replace('/', '.') + ".P";

    /// <summary>What the reason for the refusal of its member <c>Refused</c> must contain; null where everything is to be evaluated.</summary>
    public string? RefusedBecause => Tree.ToString() is { } text && text.StartsWith(RefusedMark, StringComparison.Ordinal) ? text[RefusedMark.Length..text.IndexOf('\n', StringComparison.Ordinal)].Trim() : null;
}

/// <summary>All programs, compiled into one assembly that is loaded and run, beside the compilation that is interpreted.</summary>
internal static class ProgramSuite
{
    private const string NewestMark = "// newest compiler only";

    private static readonly Lazy<ImmutableArray<ProgramFile>> Files = new(Load);
    private static readonly Lazy<CSharpCompilation> Compiled = new(() => Compile([.. All.Select(program => program.Tree)]));
    private static readonly Lazy<Assembly> Loaded = new(() => Emit(Compilation));
    private static readonly Lazy<EvaluationSession> Interpreting = new(() => EvaluationSession.TryCreate(Compilation)!);

    public static ImmutableArray<ProgramFile> All => Files.Value;

    public static CSharpCompilation Compilation => Compiled.Value;

    public static Assembly Assembly => Loaded.Value;

    public static EvaluationSession Session => Interpreting.Value;

    public static ProgramFile Find(string id) => All.Single(program => program.Id == id);

    /// <summary>The public static fields and properties of a program that really runs.</summary>
    public static IEnumerable<MemberInfo> Members(ProgramFile program) => Members(Assembly.GetType(program.TypeName, throwOnError: true)!);

    private static IEnumerable<MemberInfo> Members(Type type) =>
        type.GetMembers(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly).Where(member => member is FieldInfo or PropertyInfo);

    /// <summary>The value that running the member gives, or the exception that it throws.</summary>
    public static (object? Value, Exception? Thrown) Run(MemberInfo member)
    {
        try
        {
            return (member is FieldInfo field ? field.GetValue(null) : ((PropertyInfo)member).GetValue(null), null);
        }
        catch (Exception exception)
        {
            while (exception is TargetInvocationException or TypeInitializationException && exception.InnerException is { } inner)
                exception = inner;
            return (null, exception);
        }
    }

    /// <summary>What differs between running the program and interpreting it; nothing where they agree, or where its member <c>Refused</c> is refused as it should be.</summary>
    public static List<string> Differences(ProgramFile program) =>
        Differences(Session, Assembly.GetType(program.TypeName, throwOnError: true)!, Compilation.GetTypeByMetadataName(program.TypeName)!, program.RefusedBecause);

    /// <summary>What differs between a type of the running program and its interpretation.</summary>
    /// <param name="session">The interpreter.</param>
    /// <param name="real">The type that runs.</param>
    /// <param name="type">Its symbol.</param>
    /// <param name="refusedBecause">What the refusal of a member <c>Refused</c> must say; null where nothing is to be refused.</param>
    /// <param name="count">Told of each member that was compared, whether it throws.</param>
    public static List<string> Differences(EvaluationSession session, Type real, INamedTypeSymbol type, string? refusedBecause, Action<bool>? count = null)
    {
        var differences = new List<string>();
        foreach (var member in Members(real))
        {
            var result = session.Evaluate(type.GetMembers(member.Name).Single(), default);
            var problems = Problems(session, result).ToList();
            if (refusedBecause is not null && member.Name == "Refused")
            {
                if (!result.IsUnknown || !problems.Any(problem => problem.Kind is ProblemKind.NotComputable or ProblemKind.NotInitialised && problem.Reason.Contains(refusedBecause, StringComparison.Ordinal)))
                    differences.Add($"{member.Name}: {(result.IsUnknown ? "unknown" : result.Value ?? "null")}, not refused because '{refusedBecause}'; {Describe(problems)}");
                continue;
            }

            var (value, thrown) = Run(member);
            count?.Invoke(thrown is not null);
            if (thrown is not null)
            {
                // A finding is one line: of a longer message the first.
                if (!result.IsUnknown || !problems.Any(problem => problem.Kind == ProblemKind.Throws && FirstLine(problem.Reason) == $"this throws {thrown.GetType().Name}: {FirstLine(thrown.Message)}"))
                    differences.Add($"{member.Name}: throws {thrown.GetType().Name}: {thrown.Message}; {Describe(problems)}");
            }
            else if (result.IsUnknown || problems.Count > 0)
            {
                differences.Add($"{member.Name}: refused; {Describe(problems)}");
            }
            else
            {
                var comparison = new ValueComparison(session);
                comparison.Compare(member.Name, value, result.Value);
                differences.AddRange(comparison.Differences);
            }
        }

        return differences;
    }

    private static string FirstLine(string text) => text.Split('\n')[0].TrimEnd('\r');

    /// <summary>The problems of a member and of all that it reads.</summary>
    private static IEnumerable<Problem> Problems(EvaluationSession session, MemberResult result)
    {
        var seen = new HashSet<ISymbol>(SymbolEqualityComparer.Default) { result.Member };
        var open = new Queue<MemberResult>([result]);
        while (open.TryDequeue(out var next))
        {
            foreach (var problem in next.Problems)
                yield return problem;
            foreach (var read in next.Reads.Where(seen.Add))
                open.Enqueue(session.Evaluate(read, default));
        }
    }

    private static string Describe(List<Problem> problems) => problems.Count == 0 ? "no problem told" : string.Join("; ", problems.Select(problem => $"{problem.Kind} at '{problem.Origin.Node}': {problem.Reason}"));

    /// <summary>Compiles as an SDK project does: implicit usings, nullable annotations, the newest language.</summary>
    public static CSharpCompilation Compile(ImmutableArray<SyntaxTree> trees)
    {
        const string usings = "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq; global using System.Net.Http; "
            + "global using System.Threading; global using System.Threading.Tasks;";
        return CSharpCompilation.Create(
            "Programs",
            [Parse("Usings.g.cs", usings), .. trees],
            [.. Net100.References.All, MetadataReference.CreateFromFile(typeof(Rail).Assembly.Location), MetadataReference.CreateFromFile(Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll"))],
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true));
    }

    public static SyntaxTree Parse(string path, string text) => CSharpSyntaxTree.ParseText(text, new CSharpParseOptions(LanguageVersion.Preview), path);

    public static Assembly Emit(CSharpCompilation compilation)
    {
        using var stream = new MemoryStream();
        var result = compilation.Emit(stream);
        Assert.True(result.Success, string.Join("\n", result.Diagnostics.Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error)));
        return Assembly.Load(stream.ToArray());
    }

    private static ImmutableArray<ProgramFile> Load()
    {
        var root = Path.Combine(AppContext.BaseDirectory, "Programs");
        var newest = typeof(CSharpCompilation).Assembly.GetName().Version!.Major >= 5;
        return
        [
            .. Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
                .Select(path => (Id: Path.ChangeExtension(Path.GetRelativePath(root, path), null).Replace('\\', '/'), Text: File.ReadAllText(path)))
                .Where(file => newest || !file.Text.StartsWith(NewestMark, StringComparison.Ordinal))
                .Where(file => file.Id.Contains('/', StringComparison.Ordinal))
                .OrderBy(file => file.Id, StringComparer.Ordinal)
                .Select(file => new ProgramFile(file.Id, Parse(file.Id + ".cs", file.Text))),
        ];
    }
}
