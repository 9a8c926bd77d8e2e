using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>
/// The waivers that count for a board, with the members they may name: its own, and those of other boards whose rails it reaches, so that what was waived where it
/// is declared is not found again where it is used.
/// </summary>
internal sealed class BoardWaivers
{
    private readonly Dictionary<Waiver, Location?> locations = new(ReferenceComparer.Instance);
    private readonly List<Waiver> waivers = [];
    private readonly List<BoardMember> members = [];

    private BoardWaivers()
    {
    }

    /// <summary>What the engine needs to know of them.</summary>
    public CheckOptions Options { get; private set; } = new();

    /// <summary>Where the first waiver with a date stands; null where none has one.</summary>
    public Location? FirstDated { get; private set; }

    /// <summary>Where a waiver is written.</summary>
    public Location? LocationOf(Waiver waiver) => locations.TryGetValue(waiver, out var found) ? found : null;

    public static BoardWaivers Of(INamedTypeSymbol board, IReadOnlyList<MemberResult> reached, KnownTypes types)
    {
        var result = new BoardWaivers();
        foreach (var one in reached.Select(member => types.BoardAround(member.Member.ContainingType)).Where(one => one is not null).Distinct(SymbolEqualityComparer.Default).Cast<INamedTypeSymbol>())
        {
            result.AddType(one, SymbolEqualityComparer.Default.Equals(one, board) ? null : one, "", types);
        }

        if (result.waivers.Count == 0)
        {
            return result;
        }

        foreach (var member in reached)
        {
            if (types.BoardAround(member.Member.ContainingType) is { } around && !member.IsUnknown)
            {
                var name = NameWithin(around, member.Member);
                result.members.Add(new BoardMember(SymbolEqualityComparer.Default.Equals(around, board) ? name : around.Name + "." + name, [.. ModelWalk.CollectModelObjects(member.Value)]));
            }
        }

        result.Options = new CheckOptions
        {
            Members = [.. result.members],
            Waivers = [.. result.waivers],
            IsIncomplete = reached.Any(member => member.IsUnknown || !member.Problems.IsEmpty),
        };
        return result;
    }

    public static string NameWithin(INamedTypeSymbol board, ISymbol member)
    {
        var name = member.Name;
        for (var type = member.ContainingType; type is not null && !SymbolEqualityComparer.Default.Equals(type, board); type = type.ContainingType)
        {
            name = type.Name + "." + name;
        }

        return name;
    }

    private void AddType(INamedTypeSymbol type, INamedTypeSymbol? other, string scope, KnownTypes types)
    {
        Add(type, other, scope, types);
        foreach (var member in type.GetMembers())
        {
            var inner = scope.Length == 0 ? member.Name : scope + "." + member.Name;
            switch (member)
            {
                case INamedTypeSymbol nested:
                    AddType(nested, other, inner, types);
                    break;
                case IFieldSymbol { IsImplicitlyDeclared: false } or IPropertySymbol:
                    Add(member, other, inner, types);
                    break;
            }
        }
    }

    private void Add(ISymbol symbol, INamedTypeSymbol? other, string scope, KnownTypes types)
    {
        foreach (var attribute in types.WaiversOn(symbol))
        {
            var waiver = Read(attribute) with { Scope = other is null ? scope : scope.Length == 0 ? other.Name : other.Name + "." + scope, IsOfAnotherBoard = other is not null };
            var location = LocationOf(attribute);
            waivers.Add(waiver);
            locations[waiver] = location;
            if (other is null && waiver.Until is not null)
            {
                FirstDated ??= location;
            }
        }
    }

    public static Location? LocationOf(AttributeData attribute) =>
        attribute.ApplicationSyntaxReference is { } reference ? Location.Create(reference.SyntaxTree, reference.Span) : null;

    public static Waiver Read(AttributeData attribute)
    {
        string? Named(string name) => attribute.NamedArguments.FirstOrDefault(argument => argument.Key == name).Value.Value as string;
        return new Waiver(attribute.ConstructorArguments.Length == 1 ? attribute.ConstructorArguments[0].Value as string ?? "" : "")
        {
            On = Named(nameof(Waiver.On)),
            Reason = Named(nameof(Waiver.Reason)),
            ApprovedBy = Named(nameof(Waiver.ApprovedBy)),
            Until = Named(nameof(Waiver.Until)),
        };
    }
}
