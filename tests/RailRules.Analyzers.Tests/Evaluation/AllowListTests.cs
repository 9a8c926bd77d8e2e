using System.Reflection;
using System.Text.RegularExpressions;
using RailRules.Analyzers.Evaluation;
using UnitsNet;

namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>Only listed members are ever called. The list is gone through member by member.</summary>
public class AllowListTests
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Every method and constructor of the framework, UnitsNet and RailRules that the list lets through.</summary>
    private static List<MethodBase> Listed { get; } = [.. Candidates().Where(member => AllowList.Find(member) is not null)];

    private static IEnumerable<MethodBase> Candidates()
    {
        var assemblies = new HashSet<Assembly> { typeof(object).Assembly, typeof(Enumerable).Assembly, typeof(Rail).Assembly, typeof(ElectricPotential).Assembly };
        foreach (var path in ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator))
        {
            var name = Path.GetFileNameWithoutExtension(path);
            if (name.StartsWith("System", StringComparison.Ordinal))
            {
                assemblies.Add(Assembly.Load(name));
            }
        }

        foreach (var type in assemblies.SelectMany(assembly => assembly.GetExportedTypes()))
        {
            foreach (var member in type.GetMethods(Everything).Cast<MethodBase>().Concat(type.GetConstructors(Everything)))
            {
                yield return member;
            }
        }
    }

    [Fact]
    public void The_list_is_not_empty_and_not_everything()
    {
        Assert.InRange(Listed.Count, 2_000, 20_000);
        Assert.Contains(Listed, member => member.DeclaringType == typeof(Math) && member.Name == "Sqrt");
        Assert.Contains(Listed, member => member.DeclaringType == typeof(ElectricPotential) && member.Name == "FromVolts");
    }

    [Fact]
    public void No_namespace_that_reaches_outside_is_on_the_list()
    {
        var allowed = new[] { "System", "System.Collections", "System.Collections.Generic", "System.Collections.Immutable", "System.Collections.ObjectModel", "System.Globalization", "System.Linq", "System.Text", "RailRules", "UnitsNet" };
        Assert.Empty(Listed.Select(member => member.DeclaringType!.Namespace).Distinct().Except(allowed));
    }

    [Theory]
    [InlineData("clock", @"^(get_(Now|UtcNow|Today|TickCount|TickCount64)|GetTimestamp|ToLocalTime|ToUniversalTime)$")]
    [InlineData("hash codes", "^GetHashCode$")]
    [InlineData("reflection", "^(GetType|GetMethod|GetTypeFromHandle|CreateInstance|DynamicInvoke|get_Method|get_Target|MemberwiseClone)$")]
    [InlineData("culture", "^(get_CurrentCulture|get_CurrentUICulture|GetCultureInfo|CreateSpecificCulture|get_InstalledUICulture)$")]
    [InlineData("chance", "^(NewGuid|Next|NextDouble|NextBytes|GetItems|Shuffle|get_Shared)$")]
    [InlineData("memory", "^(EnsureCapacity|TrimExcess|GetPinnableReference|AsSpan|AsMemory|DangerousGetPinnableReference)$")]
    public void Members_that_depend_on_more_than_their_arguments_are_refused(string what, string pattern) =>
        Assert.True(!Listed.Exists(member => Regex.IsMatch(member.Name, pattern)), what + ": " + string.Join(", ", Listed.Where(member => Regex.IsMatch(member.Name, pattern)).Select(member => $"{member.DeclaringType}.{member.Name}")));

    [Fact]
    public void Types_that_reach_outside_have_no_listed_member()
    {
        var refused = new[]
        {
            typeof(Environment), typeof(File), typeof(Directory), typeof(Path), typeof(Stream), typeof(Console), typeof(Random), typeof(Guid), typeof(GC), typeof(Activator), typeof(Type), typeof(Assembly), typeof(AppDomain),
            typeof(Thread), typeof(Task), typeof(Timer), typeof(TimeProvider), typeof(System.Diagnostics.Process), typeof(System.Diagnostics.Stopwatch), typeof(System.Net.Http.HttpClient), typeof(HashCode), typeof(TimeZoneInfo), typeof(DateTimeOffset),
            typeof(System.Runtime.InteropServices.Marshal), typeof(System.Runtime.CompilerServices.Unsafe), typeof(System.Runtime.CompilerServices.RuntimeHelpers), typeof(System.Numerics.BigInteger), typeof(Engine), typeof(Network), typeof(Lazy<>),
        };
        Assert.All(refused, type => Assert.DoesNotContain(Listed, member => member.DeclaringType == type));
    }

    /// <summary>Memory or work that an argument asks for is looked at before the call.</summary>
    [Fact]
    public void Members_that_allocate_by_a_number_have_a_guard()
    {
        var unguarded = Listed.Where(member =>
            member.GetParameters().Any(parameter => parameter.ParameterType == typeof(int) && parameter.Name is "capacity" or "initialCapacity" or "count" or "repeatCount" or "totalWidth" or "size")
            && (member.IsConstructor || member.Name is "Repeat" or "Range" or "PadLeft" or "PadRight" or "CreateBuilder" or "Append" or "Insert")
            && Guards.For(member) is null).ToList();

        // These take their number from a collection or text that is there already, or make values of fixed size.
        unguarded.RemoveAll(member => member.GetParameters().Any(parameter => parameter.ParameterType.IsArray || parameter.Name == "index") && !member.DeclaringType!.Name.StartsWith("StringBuilder", StringComparison.Ordinal));
        Assert.True(unguarded.Count == 0, string.Join(", ", unguarded.Select(member => $"{member.DeclaringType}.{member}")));
    }

    [Fact]
    public void Text_and_metadata_of_quantities_are_refused() =>
        Assert.DoesNotContain(Listed, member => typeof(IQuantity).IsAssignableFrom(member.DeclaringType) && Regex.IsMatch(member.Name, "ToString|Parse|Abbreviation|Info|Localization"));

    [Fact]
    public void Members_that_change_their_object_are_marked()
    {
        var changing = new Regex("^(Add|AddRange|Insert|InsertRange|Remove|RemoveAt|RemoveAll|RemoveRange|Clear|Push|Pop|Enqueue|Dequeue|set_.*|Sort|Reverse|Append|AppendLine|UnionWith|ExceptWith|IntersectWith)$");
        var unmarked = Listed.Where(member => !member.IsStatic && changing.IsMatch(member.Name) && AllowList.Find(member) is { Mutates: false }
            && typeof(System.Collections.IEnumerable).IsAssignableFrom(member.DeclaringType) && !member.DeclaringType!.Name.StartsWith("Immutable", StringComparison.Ordinal)).ToList();
        Assert.True(unmarked.TrueForAll(member => member.DeclaringType!.Name is "Builder" or "SortedSet`1" or "String"), string.Join(", ", unmarked.Select(member => $"{member.DeclaringType}.{member.Name}")));
    }
}
