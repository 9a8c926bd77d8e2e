using System.Collections.Concurrent;
using System.Reflection;
using UnitsNet;

namespace RailRules.Analyzers.Evaluation;

/// <summary>
/// The members of compiled assemblies that are evaluated; nothing else is ever called. Each is pure but for the object it is called on,
/// ends, and its work is charged by its cost rule before it is called.
/// </summary>
internal static partial class AllowList
{
    private static readonly ConcurrentDictionary<MethodBase, Allowed?> Found = new();
    private static readonly Dictionary<string, AllowedType> Framework = MakeFramework();

    /// <summary>Types of RailRules that are no part of a model.</summary>
    private static readonly HashSet<string> NotModel = new(StringComparer.Ordinal) { "Network", "Engine", "CheckOptions", "Figures", "Registry", "BoardModelBuilder", "DesignRule" };

    /// <summary>The type in this process that stands for a known type of a compiled assembly.</summary>
    public static Type? FindType(string metadataName, AssemblyKind kind) => kind switch
    {
        AssemblyKind.RailRules => typeof(Rail).Assembly.GetType(metadataName) is { IsPublic: true } or { IsNestedPublic: true } ? typeof(Rail).Assembly.GetType(metadataName) : null,
        AssemblyKind.UnitsNet => typeof(ElectricPotential).Assembly.GetType(metadataName) is { } type && (IsQuantity(type) || type.IsEnum || type == typeof(UnitMath) || type == typeof(QuantityValue)) ? type : null,
        AssemblyKind.Framework => Framework.TryGetValue(metadataName, out var allowed) ? allowed.Type : null,
        _ => null,
    };

    /// <summary>The rule for a member; null where it is not on the list.</summary>
    public static Allowed? Find(MethodBase method) => Found.GetOrAdd(method, static member => Look(member));

    /// <summary>Every type of the framework on the list, for tests and documentation.</summary>
    public static IEnumerable<Type> FrameworkTypes => Framework.Values.Select(allowed => allowed.Type);

    /// <summary>Whether a public static field is on the list.</summary>
    public static bool IsListed(FieldInfo field)
    {
        if (field.DeclaringType is not { } type)
        {
            return false;
        }

        if (type.Assembly == typeof(Rail).Assembly || type.Assembly == typeof(ElectricPotential).Assembly)
        {
            return true;
        }

        var definition = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        return definition.FullName is { } name && Framework.TryGetValue(name, out var allowed) && allowed.Has(field.Name);
    }

    /// <summary>Whether some member of that name is on the list, so that only its overload is not.</summary>
    public static bool HasName(Type definition, Microsoft.CodeAnalysis.IMethodSymbol method) =>
        definition.FullName is { } name && Framework.TryGetValue(name, out var allowed) && allowed.Has(method.MethodKind == Microsoft.CodeAnalysis.MethodKind.Constructor ? "new" : method.Name);

    private static Allowed? Look(MethodBase method)
    {
        if (method.DeclaringType is not { } type || !method.IsPublic)
        {
            return null;
        }

        if (method.Name is "GetHashCode" or "GetType" or "Finalize" or "MemberwiseClone")
        {
            return null;
        }

        if (type.Assembly == typeof(Rail).Assembly)
        {
            return LookInRailRules(type, method);
        }

        if (type.Assembly == typeof(ElectricPotential).Assembly)
        {
            return LookInUnitsNet(type, method);
        }

        var definition = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        return definition.FullName is { } name && Framework.TryGetValue(name, out var allowed) && allowed.Type == definition ? allowed.Find(method) : null;
    }

    private static Allowed? LookInRailRules(Type type, MethodBase method)
    {
        if (!type.IsVisible || type.Namespace != "RailRules" || NotModel.Contains(type.Name) || typeof(Attribute).IsAssignableFrom(type))
        {
            return null;
        }

        // Record text formats quantities; only sources have a text of their own: their name.
        return method.Name == "ToString" ? typeof(Source).IsAssignableFrom(type) ? Allowed.Constant : null : Allowed.Constant;
    }

    private static Allowed? LookInUnitsNet(Type type, MethodBase method)
    {
        if (type == typeof(UnitMath))
        {
            return Allowed.Linear;
        }

        if (type == typeof(QuantityValue))
        {
            return method.Name is "op_Implicit" or "op_Explicit" or "op_Equality" or "op_Inequality" or "Equals" or "CompareTo" || method.IsSpecialName ? Allowed.Constant : null;
        }

        if (!IsQuantity(type))
        {
            return null;
        }

        // Text of quantities is slow at first use and depends on culture; metadata of units is none of a board's business.
        return method.Name.Contains("Parse") || method.Name is "ToString" or "GetAbbreviation" or "GetTypeCode" or "RegisterDefaultConversions" or "MapGeneratedLocalizations"
            || method.Name is "get_Info" or "get_DefaultConversionFunctions" or "get_Units" or "get_Dimensions" or "get_BaseDimensions" or "get_QuantityInfo"
            ? null
            : Allowed.Constant;
    }

    private static bool IsQuantity(Type type) => type is { IsValueType: true, IsPublic: true } && typeof(IQuantity).IsAssignableFrom(type);
}

/// <summary>How a listed member is charged, and whether it changes the object on which it is called.</summary>
/// <param name="Cost">The cost rule.</param>
/// <param name="Mutates">Whether it changes its receiver.</param>
internal sealed record Allowed(Cost Cost, bool Mutates)
{
    public static readonly Allowed Constant = new(Cost.Constant, false);
    public static readonly Allowed Linear = new(Cost.Linear, false);
    public static readonly Allowed Changes = new(Cost.Constant, true);
    public static readonly Allowed ChangesLinear = new(Cost.Linear, true);
}

/// <summary>What a call is charged.</summary>
internal enum Cost
{
    /// <summary>One step.</summary>
    Constant,

    /// <summary>A step for each element of receiver and arguments, and for each sixteen characters.</summary>
    Linear,
}

/// <summary>A listed type with its listed members by name.</summary>
internal sealed class AllowedType(Type type)
{
    private readonly Dictionary<string, Allowed> members = new(StringComparer.Ordinal);

    public Type Type { get; } = type;

    public IEnumerable<string> Members => members.Keys;

    public bool Has(string name) => members.ContainsKey(name);

    /// <summary>Adds names, separated by blanks. A property is named by its name, an indexer Item, a constructor new, operators op.</summary>
    public AllowedType Add(Allowed rule, string names)
    {
        foreach (var name in names.Split([' '], StringSplitOptions.RemoveEmptyEntries))
        {
            members[name] = rule;
        }

        return this;
    }

    public Allowed? Find(MethodBase method)
    {
        var name = method.Name;
        if (method.IsConstructor)
        {
            name = "new";
        }
        else if (name.StartsWith("op_", StringComparison.Ordinal))
        {
            name = "op";
        }
        else if (method.IsSpecialName && name.StartsWith("get_", StringComparison.Ordinal))
        {
            name = name.Substring(4);
        }
        else if (method.IsSpecialName && name.StartsWith("set_", StringComparison.Ordinal))
        {
            name = "set:" + name.Substring(4);
        }

        return members.TryGetValue(name, out var rule) ? rule : null;
    }
}
