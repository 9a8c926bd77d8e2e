using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers.Evaluation;
using UnitsNet;

namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>
/// Compiles a program and does two things with it: runs it, and interprets it. Every static field and property of its class <c>P</c> must come out the same,
/// number for number; where the running program throws, the interpreter must report the same exception.
/// </summary>
internal sealed class DifferentialHarness
{
    private const string Usings = """
        global using System;
        global using System.Collections.Generic;
        global using System.Collections.Immutable;
        global using System.Linq;
        global using RailRules;
        global using UnitsNet;
        """;

    private static readonly ImmutableArray<MetadataReference> References =
    [
        .. Basic.Reference.Assemblies.Net100.References.All,
        MetadataReference.CreateFromFile(typeof(Rail).Assembly.Location),
        MetadataReference.CreateFromFile(typeof(ElectricPotential).Assembly.Location),
    ];

    private static readonly CSharpParseOptions ParseOptions = new(LanguageVersion.Latest);

    private readonly HashSet<(object, object)> compared = new(PairComparer.Instance);
    private readonly List<string> differences = [];

    private DifferentialHarness(CSharpCompilation compilation) => Compilation = compilation;

    public CSharpCompilation Compilation { get; }

    /// <summary>What the interpreter said of each member.</summary>
    public Dictionary<string, MemberResult> Results { get; } = [];

    /// <summary>The session, for questions about origins.</summary>
    public EvaluationSession Session { get; private set; } = null!;

    public IReadOnlyList<string> Differences => differences;

    public IEnumerable<Problem> Problems => Results.Values.SelectMany(result => result.Problems);

    /// <summary>Whether this Roslyn knows the language that a program's name asks for, e.g. "C# 14: field keyword".</summary>
    public static bool Understands(string name) => !name.StartsWith("C# 14", StringComparison.Ordinal) || LanguageVersionFacts.MapSpecifiedToEffectiveVersion(LanguageVersion.Latest) >= (LanguageVersion)1400;

    /// <summary>A compilation of a program's files with the usual usings.</summary>
    public static CSharpCompilation Compile(params string[] sources) => CSharpCompilation.Create(
        "Program" + Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture),
        [
            CSharpSyntaxTree.ParseText(Usings, ParseOptions, "Usings.cs"),
            .. sources.Select((source, i) => CSharpSyntaxTree.ParseText(source, ParseOptions, $"Program{i}.cs")),
        ],
        References,
        new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true, checkOverflow: false));

    /// <summary>Runs and interprets the program and fails where they differ or where anything is refused.</summary>
    public static DifferentialHarness AssertSame(params string[] sources)
    {
        var harness = Run(sources);
        Assert.True(harness.Results.Count > 0, "class P has no static members");
        Assert.True(harness.Differences.Count == 0, string.Join(Environment.NewLine, harness.Differences));
        return harness;
    }

    /// <summary>Interprets the program and expects a problem of the kind, whose reason contains the text.</summary>
    public static DifferentialHarness AssertRefused(string source, ProblemKind kind, string reason = "", EvaluationLimits? limits = null)
    {
        var harness = Interpret(Compile(source), limits);
        Assert.True(
            harness.Problems.Any(problem => problem.Kind == kind && problem.Reason.Contains(reason, StringComparison.Ordinal)),
            $"expected {kind} '{reason}', found: " + Describe(harness.Problems));
        Assert.DoesNotContain(harness.Problems, problem => problem.Reason.StartsWith("internal", StringComparison.Ordinal));
        return harness;
    }

    /// <summary>Interprets the members of class P, without running the program.</summary>
    public static DifferentialHarness Interpret(CSharpCompilation compilation, EvaluationLimits? limits = null)
    {
        var harness = new DifferentialHarness(compilation) { Session = EvaluationSession.TryCreate(compilation, limits)! };
        harness.EvaluateAll();
        return harness;
    }

    /// <summary>Runs and interprets; what differs is in <see cref="Differences"/>.</summary>
    public static DifferentialHarness Run(params string[] sources)
    {
        var compilation = Compile(sources);
        return Run(compilation, compilation);
    }

    /// <summary>Runs one program and interprets another: what differs.</summary>
    public static IReadOnlyList<string> Compare(CSharpCompilation run, CSharpCompilation interpreted) => Run(run, interpreted).Differences;

    private static DifferentialHarness Run(CSharpCompilation compilation, CSharpCompilation interpreted)
    {
        using var image = new MemoryStream();
        var emitted = compilation.Emit(image);
        Assert.True(emitted.Success, string.Join(Environment.NewLine, emitted.Diagnostics.Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error)));
        var harness = Interpret(interpreted);
        image.Position = 0;
        var context = new AssemblyLoadContext(compilation.AssemblyName, isCollectible: true);
        try
        {
            harness.Compare(context.LoadFromStream(image));
        }
        finally
        {
            context.Unload();
        }

        return harness;
    }

    public static string Describe(IEnumerable<Problem> problems) =>
        string.Join("; ", problems.Select(problem => $"{problem.Kind} at '{problem.Origin.Node}': {problem.Reason}"));

    private void EvaluateAll()
    {
        var program = Compilation.GetTypeByMetadataName("P");
        Assert.NotNull(program);
        foreach (var member in program.GetMembers())
        {
            if (member is IFieldSymbol { IsStatic: true, IsImplicitlyDeclared: false } or IPropertySymbol { IsStatic: true, IsIndexer: false, GetMethod: not null })
            {
                Results[member.Name] = Session.Evaluate(member, default);
            }
        }
    }

    private void Compare(Assembly assembly)
    {
        var type = assembly.GetType("P")!;
        foreach (var (name, result) in Results)
        {
            object? real;
            try
            {
                real = Read(type, name);
            }
            catch (Exception exception)
            {
                CompareException(name, Innermost(exception));
                continue;
            }

            if (result.IsUnknown)
            {
                differences.Add($"{name}: unknown to the interpreter, {Show(real)} in the program; " + Describe(Problems));
            }
            else
            {
                CompareValues(name, real, result.Value);
            }

            if (result.Problems.Length > 0)
            {
                differences.Add($"{name}: " + Describe(result.Problems));
            }
        }
    }

    private static object? Read(Type type, string name)
    {
        const BindingFlags Any = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;
        return type.GetField(name, Any) is { } field ? field.GetValue(null) : type.GetProperty(name, Any)!.GetValue(null);
    }

    private static Exception Innermost(Exception exception) =>
        exception is TargetInvocationException or TypeInitializationException && exception.InnerException is { } inner ? Innermost(inner) : exception;

    private void CompareException(string name, Exception real)
    {
        var expected = $"this throws {real.GetType().Name}: {real.Message}";
        if (!Problems.Any(problem => problem.Kind == ProblemKind.Throws && (problem.Reason == expected || (real is InvalidCastException or SwitchExpressionException && problem.Reason.StartsWith($"this throws {real.GetType().Name}", StringComparison.Ordinal)))))
        {
            differences.Add($"{name}: the program throws {real.GetType().Name} '{real.Message}', the interpreter says: {Describe(Problems)}");
        }
    }

    private static string Show(object? value) => value is null ? "null" : $"{value} ({value.GetType().Name})";

    /// <summary>Compares a value of the running program with the interpreter's, in depth.</summary>
    private void CompareValues(string path, object? real, object? interpreted)
    {
        if (real is null || interpreted is null)
        {
            if (real is not null || interpreted is not null)
            {
                Differ(path, real, interpreted);
            }

            return;
        }

        if (!real.GetType().IsValueType && !compared.Add((real, interpreted)))
        {
            return;
        }

        switch (interpreted)
        {
            case UserEnum user:
                if (!real.GetType().IsEnum || Enums.Bits(Enums.Underlying(real)!) != user.Bits || real.GetType().Name != user.Type?.Name)
                {
                    Differ(path, real, interpreted);
                }

                break;
            case UserObject user:
                CompareObjects(path, real, user);
                break;
            case IndexValue or RangeValue:
                if (real.ToString() != interpreted.ToString())
                {
                    Differ(path, real, interpreted);
                }

                break;
            case IQuantity quantity:
                if (real.GetType() != quantity.GetType() || !((IQuantity)real).Value.Equals(quantity.Value) || !((IQuantity)real).Unit.Equals(quantity.Unit))
                {
                    Differ(path, real, interpreted);
                }

                break;
            case string or IConvertible or TimeSpan or DateOnly:
                if (real.GetType() != interpreted.GetType() || !SameBits(real, interpreted))
                {
                    Differ(path, real, interpreted);
                }

                break;
            case Delegate:
                if (real is not Delegate)
                {
                    Differ(path, real, interpreted);
                }

                break;
            case IEnumerable items:
                CompareSequences(path, real, items);
                break;
            default:
                CompareMembers(path, real, interpreted);
                break;
        }
    }

    private static bool SameBits(object real, object interpreted) => (real, interpreted) switch
    {
        (double a, double b) => BitConverter.DoubleToInt64Bits(a) == BitConverter.DoubleToInt64Bits(b) || (double.IsNaN(a) && double.IsNaN(b)),
        (float a, float b) => BitConverter.SingleToInt32Bits(a) == BitConverter.SingleToInt32Bits(b) || (float.IsNaN(a) && float.IsNaN(b)),
        (decimal a, decimal b) => decimal.GetBits(a).SequenceEqual(decimal.GetBits(b)),
        _ => real.Equals(interpreted),
    };

    private void CompareObjects(string path, object real, UserObject interpreted)
    {
        if (!interpreted.Type.IsAnonymousType && real.GetType().Name != interpreted.Type.MetadataName)
        {
            Differ(path, real, interpreted);
            return;
        }

        for (var i = 0; i < interpreted.Layout.Count; i++)
        {
            var symbol = interpreted.Layout.Fields[i];
            if (symbol is IParameterSymbol || symbol.Name.StartsWith('<'))
            {
                continue;
            }

            var value = symbol is IPropertySymbol
                ? Field(real.GetType(), $"<{symbol.Name}>k__BackingField")?.GetValue(real) ?? Field(real.GetType(), $"<{symbol.Name}>i__Field")?.GetValue(real)
                : Field(real.GetType(), symbol.Name)?.GetValue(real);
            CompareValues($"{path}.{symbol.Name}", value, interpreted.Slots[i]);
        }
    }

    private static FieldInfo? Field(Type? type, string name)
    {
        for (; type is not null; type = type.BaseType)
        {
            if (type.GetField(name, BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly) is { } field)
            {
                return field;
            }
        }

        return null;
    }

    private void CompareSequences(string path, object real, IEnumerable interpreted)
    {
        if (real is not IEnumerable sequence)
        {
            Differ(path, real, interpreted);
            return;
        }

        if (IsDefaultArray(real) || IsDefaultArray(interpreted))
        {
            if (!(IsDefaultArray(real) && IsDefaultArray(interpreted)))
            {
                Differ(path, real, interpreted);
            }

            return;
        }

        var left = sequence.Cast<object?>().ToList();
        var right = Session.OnDeepStack(() => interpreted.Cast<object?>().ToList());
        if (left.Count != right.Count)
        {
            differences.Add($"{path}: {left.Count} elements in the program, {right.Count} in the interpreter");
            return;
        }

        if ((real is IList) != (interpreted is IList))
        {
            differences.Add($"{path}: {real.GetType()} in the program, {interpreted.GetType()} in the interpreter");
        }

        for (var i = 0; i < left.Count; i++)
        {
            CompareValues($"{path}[{i}]", left[i], right[i]);
        }
    }

    private static bool IsDefaultArray(object value) => value.GetType().GetProperty("IsDefault")?.GetValue(value) is true;

    private void CompareMembers(string path, object real, object interpreted)
    {
        if (real.GetType().Name != interpreted.GetType().Name)
        {
            Differ(path, real, interpreted);
            return;
        }

        foreach (var field in interpreted.GetType().GetFields(BindingFlags.Instance | BindingFlags.Public))
        {
            CompareValues($"{path}.{field.Name}", Field(real.GetType(), field.Name)?.GetValue(real), field.GetValue(interpreted));
        }

        foreach (var property in interpreted.GetType().GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic))
        {
            if (property.GetIndexParameters().Length == 0 && property.Name is not ("EqualityContract" or "TargetSite" or "StackTrace" or "System.Runtime.CompilerServices.ITuple.Item"))
            {
                var other = real.GetType().GetProperty(property.Name, BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic);
                CompareValues($"{path}.{property.Name}", other?.GetValue(real), property.GetValue(interpreted));
            }
        }
    }

    private void Differ(string path, object? real, object? interpreted) => differences.Add($"{path}: {Show(real)} in the program, {Show(interpreted)} in the interpreter");

    private sealed class PairComparer : IEqualityComparer<(object, object)>
    {
        public static readonly PairComparer Instance = new();

        public bool Equals((object, object) x, (object, object) y) => ReferenceEquals(x.Item1, y.Item1) && ReferenceEquals(x.Item2, y.Item2);

        public int GetHashCode((object, object) obj) => HashCode.Combine(RuntimeHelpers.GetHashCode(obj.Item1), RuntimeHelpers.GetHashCode(obj.Item2));
    }
}
