using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RailRules.Analyzers;

/// <summary>A rule of the team's own, as its attribute describes it.</summary>
/// <param name="Id">The team's id.</param>
/// <param name="Title">What it finds.</param>
/// <param name="Severity">How a failing check is shown.</param>
/// <param name="Method">The rule.</param>
/// <param name="OfBoard">Whether it judges a board as a whole; else a rail.</param>
/// <param name="Help">The documentation comment as plain text.</param>
internal sealed record TeamRule(string Id, string Title, FindingSeverity Severity, IMethodSymbol Method, bool OfBoard, string Help);

/// <summary>Finds and reads <c>[DesignRule]</c> methods; generator and analyzer read with this class.</summary>
internal static class TeamRules
{
    public const string Attribute = "RailRules.DesignRuleAttribute";
    private const string Carried = "RailRules.CarriedDesignRuleAttribute";

    /// <summary>The attribute of a rule; null for other methods. Methods without any attribute in the source are told apart by their syntax, which costs nothing.</summary>
    public static AttributeData? AttributeOf(IMethodSymbol method, CancellationToken cancellation)
    {
        foreach (var reference in method.DeclaringSyntaxReferences)
        {
            if (reference.GetSyntax(cancellation) is BaseMethodDeclarationSyntax { AttributeLists.Count: > 0 } or AccessorDeclarationSyntax { AttributeLists.Count: > 0 })
            {
                return method.GetAttributes().FirstOrDefault(IsRule);
            }
        }

        return null;
    }

    public static bool IsRule(AttributeData attribute) => attribute.AttributeClass is { Name: nameof(DesignRuleAttribute) } found && found.ToDisplayString() == Attribute;

    /// <summary>The rules in a type, those of nested types not included, with what keeps each from working; clashes of ids aside.</summary>
    public static IEnumerable<(TeamRule? Rule, AttributeData Attribute, IMethodSymbol Method, string? Fault)> In(INamedTypeSymbol type, CancellationToken cancellation)
    {
        foreach (var member in type.GetMembers())
        {
            if (member is IMethodSymbol { IsImplicitlyDeclared: false, PartialDefinitionPart: null } method && AttributeOf(method.PartialImplementationPart ?? method, cancellation) is { } attribute)
            {
                var fault = FaultOf(method, attribute);
                yield return (fault is null ? Read(method, attribute, cancellation) : null, attribute, method, fault);
            }
        }
    }

    public static TeamRule Read(IMethodSymbol method, AttributeData attribute, CancellationToken cancellation)
    {
        var severity = attribute.NamedArguments.FirstOrDefault(argument => argument.Key == nameof(DesignRuleAttribute.Severity)).Value.Value;
        return new TeamRule(
            Text(attribute, 0), Text(attribute, 1), severity is int value ? (FindingSeverity)value : FindingSeverity.Warning, method, method.Parameters[0].Type.Name == nameof(BoardModel), HelpOf(method, cancellation));
    }

    public static string Text(AttributeData attribute, int index) => attribute.ConstructorArguments.Length > index ? attribute.ConstructorArguments[index].Value as string ?? "" : "";

    /// <summary>Why a rule cannot work as it is written; null where it can.</summary>
    public static string? FaultOf(IMethodSymbol method, AttributeData attribute)
    {
        var id = Text(attribute, 0);
        if (id.Trim().Length == 0)
        {
            return "it has no id; write a letter, then letters, digits, '_', '-' or '.', e.g. LOCK001";
        }

        if (id.StartsWith("RAIL", StringComparison.OrdinalIgnoreCase))
        {
            return $"its id begins with RAIL, as this library's own do; begin with letters of the team's own, e.g. LOCK001";
        }

        if (!IsLetter(id[0]) || !id.All(c => IsLetter(c) || (c >= '0' && c <= '9') || c is '_' or '-' or '.'))
        {
            return $"its id '{id}' cannot be named in .editorconfig; write a letter, then letters, digits, '_', '-' or '.', e.g. LOCK001";
        }

        if (Text(attribute, 1).Trim().Length == 0)
        {
            return "it has no title; say in a few words what it finds";
        }

        if (attribute.NamedArguments.Any(argument => argument.Key == nameof(DesignRuleAttribute.Severity) && argument.Value.Value is int value && (value < 0 || value > (int)FindingSeverity.Error)))
        {
            return "its severity is none of FindingSeverity";
        }

        return FormFault(method);
    }

    private static string? FormFault(IMethodSymbol method)
    {
        const string Form = "write static IEnumerable<Check> Name(Rail rail), or with a BoardModel in place of the rail";
        if (method.MethodKind != MethodKind.Ordinary)
        {
            return "it is no ordinary method; " + Form;
        }

        if (!method.IsStatic)
        {
            return "it is not static; " + Form;
        }

        if (method.IsGenericMethod || Types(method).Any(type => type.IsGenericType))
        {
            return "it has type parameters, or its class has; " + Form;
        }

        if (method.Parameters is not [{ RefKind: RefKind.None, IsParams: false } parameter] || parameter.Type.OriginalDefinition.ToDisplayString() is not ("RailRules.Rail" or "RailRules.BoardModel"))
        {
            return "its parameters are not one Rail or one BoardModel; " + Form;
        }

        if (method.ReturnsByRef || method.ReturnsByRefReadonly || method.ReturnType is not INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Collections_Generic_IEnumerable_T, TypeArguments: [{ Name: nameof(Check) } check] }
            || check.OriginalDefinition.ToDisplayString() != "RailRules.Check")
        {
            return "it does not return IEnumerable<Check>; " + Form;
        }

        if (method.IsAbstract || method.IsExtern || (method.IsPartialDefinition && method.PartialImplementationPart is null))
        {
            return "it has no body; " + Form;
        }

        if (Types(method).Any(type => type.IsFileLocal))
        {
            return "its class is of one file only, so that Review() cannot call it; take 'file' away";
        }

        if (Types(method).Any(type => !IsOpen(type.DeclaredAccessibility)))
        {
            return $"'{Types(method).First(type => !IsOpen(type.DeclaredAccessibility)).Name}' around it is private, so that Review() cannot call it; make it internal";
        }

        return IsOpen(method.DeclaredAccessibility) || Types(method).All(IsPartial) ? null : "it is private, so that Review() cannot call it; make it internal, or its class partial";
    }

    /// <summary>Whether generated code of another class can call the rule; else it goes through its own partial class.</summary>
    public static bool IsOpen(Accessibility accessibility) => accessibility is Accessibility.Public or Accessibility.Internal or Accessibility.ProtectedOrInternal;

    /// <summary>Whether all its declarations say partial, so that the generator can add to it.</summary>
    public static bool IsPartial(INamedTypeSymbol type) =>
        !type.DeclaringSyntaxReferences.IsEmpty && type.DeclaringSyntaxReferences.All(reference => reference.GetSyntax() is TypeDeclarationSyntax declaration && declaration.Modifiers.Any(SyntaxKind.PartialKeyword));

    /// <summary>The class in which the rule stands and those around it.</summary>
    public static IEnumerable<INamedTypeSymbol> Types(IMethodSymbol method)
    {
        for (var type = method.ContainingType; type is not null; type = type.ContainingType)
        {
            yield return type;
        }
    }

    /// <summary>The public rules that a referenced assembly says it has.</summary>
    public static IEnumerable<TeamRule> CarriedBy(IAssemblySymbol assembly)
    {
        foreach (var attribute in assembly.GetAttributes())
        {
            if (attribute.AttributeClass is { Name: nameof(CarriedDesignRuleAttribute) } found && found.ToDisplayString() == Carried
                && attribute.ConstructorArguments is [{ Value: string id }, { Value: string title }, { Value: int severity }, { Value: INamedTypeSymbol type }, { Value: string name }, { Value: string help }]
                && type.GetMembers(name).OfType<IMethodSymbol>().FirstOrDefault(method => method.DeclaredAccessibility == Accessibility.Public && FormFault(method) is null) is { } rule)
            {
                yield return new TeamRule(id, title, (FindingSeverity)severity, rule, rule.Parameters[0].Type.Name == nameof(BoardModel), help);
            }
        }
    }

    /// <summary>The rules of all referenced assemblies that refer to this library, in order of id.</summary>
    public static ImmutableArray<TeamRule> OfReferences(Compilation compilation) =>
    [
        .. compilation.SourceModule.ReferencedAssemblySymbols
            .Where(assembly => assembly.Modules.Any(module => module.ReferencedAssemblies.Any(reference => reference.Name == "RailRules")))
            .SelectMany(CarriedBy)
            .OrderBy(rule => rule.Id, StringComparer.Ordinal).ThenBy(rule => rule.Method.ToDisplayString(), StringComparer.Ordinal),
    ];

    private static bool IsLetter(char c) => c is (>= 'A' and <= 'Z') or (>= 'a' and <= 'z');

    /// <summary>The text of the documentation comment's summary, from the trivia: without a documentation file the compiler reads no comments.</summary>
    private static string HelpOf(IMethodSymbol method, CancellationToken cancellation)
    {
        foreach (var reference in method.DeclaringSyntaxReferences)
        {
            var lines = reference.GetSyntax(cancellation).GetLeadingTrivia().ToFullString().Split('\n').Select(line => line.Trim()).Where(line => line.StartsWith("///", StringComparison.Ordinal)).Select(line => line.Substring(3));
            var text = string.Join(" ", lines);
            var from = text.IndexOf("<summary>", StringComparison.Ordinal);
            var to = text.IndexOf("</summary>", StringComparison.Ordinal);
            if (from >= 0 && to > from)
            {
                return Plain(text.Substring(from + 9, to - from - 9));
            }

            if (text.Trim().Length > 0)
            {
                return Plain(text);
            }
        }

        return "";
    }

    /// <summary>XML as plain text on one line: a reference by its last word, other tags left out.</summary>
    private static string Plain(string xml)
    {
        var text = new StringBuilder(xml.Length);
        for (var i = 0; i < xml.Length; i++)
        {
            if (xml[i] != '<' || xml.IndexOf('>', i) is var end && end < 0)
            {
                text.Append(xml[i]);
                continue;
            }

            var parts = xml.Substring(i, end - i).Split('"');
            if (parts.Length > 1)
            {
                text.Append(parts[1].Substring(parts[1].LastIndexOfAny(['.', ':']) + 1));
            }

            i = end;
        }

        return string.Join(" ", text.ToString().Replace("&lt;", "<").Replace("&gt;", ">").Replace("&quot;", "\"").Replace("&apos;", "'").Replace("&amp;", "&").Split([' ', '\t', '\r'], StringSplitOptions.RemoveEmptyEntries));
    }
}
