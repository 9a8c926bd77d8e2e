using System.Collections;

namespace RailRules.Analyzers;

/// <summary>Walks evaluated values: collections, tuples and the user's own objects, down to the objects of the model.</summary>
internal static class ModelWalk
{
    /// <summary>Every rail reachable from a value and everything that feeds those, each once, in the order met.</summary>
    public static void CollectRails(object? value, List<Rail> rails, HashSet<object> seen)
    {
        var work = new Stack<object?>();
        work.Push(value);
        while (work.Count > 0)
        {
            var current = work.Pop();
            if (IsLeaf(current) || current is null)
            {
                continue;
            }

            if (!current.GetType().IsValueType && !seen.Add(current))
            {
                continue;
            }

            switch (current)
            {
                case Rail rail:
                    rails.Add(rail);
                    work.Push(rail.From);
                    PushAll(work, rail.Feeds.IsDefault ? [] : rail.Feeds.Select(feed => (object?)feed?.From));
                    break;
                case Converter converter:
                    work.Push(converter.Input);
                    break;
                default:
                    PushAll(work, Parts(current));
                    break;
            }
        }
    }

    /// <summary>The objects of the model that a value directly holds: parts, loads, sources, policies, in the order met.</summary>
    public static IEnumerable<object> CollectModelObjects(object? value)
    {
        var seen = new HashSet<object>(Evaluation.ReferenceComparer.Instance);
        var work = new Stack<object?>();
        work.Push(value);
        while (work.Count > 0)
        {
            var current = work.Pop();
            if (IsLeaf(current) || current is null || (!current.GetType().IsValueType && !seen.Add(current)))
            {
                continue;
            }

            if (current.GetType().Assembly == typeof(Rail).Assembly)
            {
                yield return current;
            }
            else
            {
                PushAll(work, Parts(current));
            }
        }
    }

    /// <summary>Adds what a value holds to the description of a board, with names as the generated code gives them.</summary>
    public static void Describe(BoardModelBuilder builder, string at, object? value)
    {
        if (value is Evaluation.UserObject user)
        {
            if (builder.Enter(user))
            {
                for (var i = 0; i < user.Slots.Length; i++)
                {
                    if (user.Layout.Counts(i))
                    {
                        Describe(builder, at + "." + user.Layout.Fields[i].Name, user.Slots[i]);
                    }
                }
            }
        }
        else if (value is not null && IsTuple(value))
        {
            var index = 0;
            foreach (var item in TupleItems(value))
            {
                Describe(builder, $"{at}.Item{++index}", item);
            }
        }
        else if (value is IDictionary map)
        {
            foreach (DictionaryEntry entry in map)
            {
                Describe(builder, at + ".Keys", entry.Key);
                Describe(builder, at + BoardModelBuilder.Key(entry.Key), entry.Value);
            }
        }
        else if (value is IEnumerable items && !IsLeaf(value) && value.GetType().Assembly != typeof(Rail).Assembly)
        {
            var index = 0;
            foreach (var item in Items(items))
            {
                Describe(builder, at + BoardModelBuilder.Index(index++), item);
            }
        }
        else if (value?.GetType().Assembly == typeof(Rail).Assembly)
        {
            builder.Add(at, value);
        }
    }

    /// <summary>What a value that is no source holds: the items of collections and tuples, the properties of the user's objects and of feeds and groups.</summary>
    public static IEnumerable<object?> Parts(object value) => value switch
    {
        Feed feed => [feed.From],
        Evaluation.UserObject user => user.Slots,
        DictionaryEntry entry => [entry.Key, entry.Value],
        IEnumerable items => Items(items),
        _ when IsTuple(value) => TupleItems(value),
        _ => [],
    };

    private static bool IsLeaf(object? value) => value is null or string || (value is ValueType and not IEnumerable && !IsTuple(value));

    private static bool IsTuple(object value) => value.GetType() is { IsGenericType: true } type
        && (type.FullName!.StartsWith("System.ValueTuple`", StringComparison.Ordinal) || type.FullName.StartsWith("System.Tuple`", StringComparison.Ordinal));

    private static IEnumerable<object?> TupleItems(object tuple) =>
        tuple.GetType().IsValueType
            ? tuple.GetType().GetFields().Select(field => field.GetValue(tuple))
            : tuple.GetType().GetProperties().Select(property => property.GetValue(tuple));

    private static IEnumerable<object?> Items(IEnumerable items)
    {
        // A default ImmutableArray throws on enumeration; it holds nothing.
        if (items.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition().FullName == "System.Collections.Immutable.ImmutableArray`1"
            && (bool)type.GetProperty("IsDefault")!.GetValue(items)!)
        {
            yield break;
        }

        foreach (var item in items)
        {
            if (item is not null && item.GetType() is { IsGenericType: true } pair && pair.GetGenericTypeDefinition() == typeof(KeyValuePair<,>))
            {
                yield return pair.GetProperty("Key")!.GetValue(item);
                yield return pair.GetProperty("Value")!.GetValue(item);
            }
            else
            {
                yield return item;
            }
        }
    }

    private static void PushAll(Stack<object?> work, IEnumerable<object?> values)
    {
        // Pushed in reverse, so that they are met in order.
        foreach (var value in values.Reverse())
        {
            work.Push(value);
        }
    }
}
