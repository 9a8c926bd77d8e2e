using System.Collections;
using System.Reflection;

namespace RailRules.Analyzers.Evaluation;

/// <content>Comparing objects some of whose data are unknown: whether they are equal is then unknown too.</content>
internal sealed partial class Interpreter
{
    private static readonly HashSet<string> Comparing = new(StringComparer.Ordinal)
    {
        "op_Equality", "op_Inequality", "Equals", "Contains", "IndexOf", "LastIndexOf", "Distinct", "GroupBy", "ToDictionary", "ToLookup", "ToHashSet", "Union", "Except", "Intersect",
        "SequenceEqual", "Remove", "Replace", "ContainsKey", "ContainsValue", "TryGetValue", "TryAdd", "UnionWith", "ExceptWith", "IntersectWith", "SetEquals", "CountBy",
    };

    private readonly Dictionary<Type, PropertyInfo[]> data = [];

    private static bool Compares(MethodBase target) =>
        Comparing.Contains(target.Name) || (target.Name is "Add" or "get_Item" or "set_Item" && target.DeclaringType is { IsGenericType: true } type && type.Name is "HashSet`1" or "Dictionary`2");

    /// <summary>Whether a datum of the object, or of what it leads to, is unknown. Sources are compared by reference and do not count.</summary>
    private bool HoldsUnknown(object? value, HashSet<object> seen)
    {
        switch (value)
        {
            case null or string or Source or ILazySequence or Delegate:
                return false;
            case Unknown:
                return true;
            case UserObject user:
                return seen.Add(user) && Array.Exists(user.Slots, slot => HoldsUnknown(slot, seen));
            case ICollection items:
                return HoldsUnknown(items, seen);
        }

        var type = value.GetType();
        if (type.IsValueType || type.Assembly != typeof(Rail).Assembly || !seen.Add(value))
        {
            return false;
        }

        if (Provenance.Find(value) is { HasUnknown: true })
        {
            return true;
        }

        if (!data.TryGetValue(type, out var properties))
        {
            data[type] = properties = Array.FindAll(type.GetProperties(), property => property.GetIndexParameters().Length == 0 && property.CanWrite);
        }

        return Array.Exists(properties, property => HoldsUnknown(property.GetValue(value), seen));
    }

    private bool HoldsUnknown(ICollection items, HashSet<object> seen)
    {
        if (items is ValueType && items.GetType().GetProperty("IsDefault")?.GetValue(items) is true)
        {
            return false;
        }

        foreach (var item in items)
        {
            if (HoldsUnknown(item, seen))
            {
                return true;
            }
        }

        return false;
    }
}
