using System.Collections;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace RailRules.Analyzers.Evaluation;

/// <content>Arrays, collection expressions, indexes and ranges; where each element was written.</content>
internal sealed partial class Interpreter
{
    private object? CollectionExpression(ICollectionExpressionOperation operation, Frame frame)
    {
        if (TypeOf(operation, frame) is not { } type)
        {
            return Unknown.Value;
        }

        var values = new List<object?>(operation.Elements.Length);
        var origins = new List<Origin?>(operation.Elements.Length);
        var unknown = false;
        foreach (var element in operation.Elements)
        {
            if (element is ISpreadOperation spread)
            {
                unknown |= !Spread(spread, ElementOf(type), values, origins, frame);
            }
            else
            {
                var value = Evaluate(element, frame);
                unknown |= value is Unknown;
                values.Add(value);
                origins.Add(OriginAt(element, frame));
            }

            if (values.Count > limits.Elements)
            {
                throw OverElements(operation, frame);
            }
        }

        return unknown ? Unknown.Value : MakeCollection(operation, type, values, origins, frame);
    }

    private static ITypeSymbol? ElementOf(ITypeSymbol collection) => collection switch
    {
        IArrayTypeSymbol array => array.ElementType,
        INamedTypeSymbol { TypeArguments: [var element] } => element,
        _ => null,
    };

    private bool Spread(ISpreadOperation spread, ITypeSymbol? elementType, List<object?> values, List<Origin?> origins, Frame frame)
    {
        var sequence = Evaluate(spread.Operand, frame);
        if (sequence is Unknown)
        {
            return false;
        }

        var convert = spread.ElementConversion is { IsIdentity: false, Exists: true } && spread.ElementType is not null;
        foreach (var item in Elements(sequence, spread.ElementType, spread, frame))
        {
            if (item is Unknown)
            {
                return false;
            }

            values.Add(convert && elementType is not null ? Convert(item, Resolve(spread.ElementType!, frame), elementType, spread.ElementConversion.MethodSymbol, false, spread, frame) : item);

            // An element that came out of library code has no expression of its own here: the object's own place stands for it.
            origins.Add(null);
            if (values.Count > limits.Elements)
            {
                throw OverElements(spread, frame);
            }
        }

        return true;
    }

    private object? MakeCollection(ICollectionExpressionOperation operation, ITypeSymbol type, List<object?> values, List<Origin?> origins, Frame frame)
    {
        if (type is IArrayTypeSymbol { Rank: 1 } array)
        {
            return types.Find(array.ElementType) is { } element ? MakeArray(element, values, origins) : NoCollection(type, operation, frame);
        }

        if (values.Count == 0 && types.Find(type) is { Namespace: "System.Collections.Generic", IsAbstract: false } empty && empty.GetConstructor(Type.EmptyTypes) is not null)
        {
            var made = Activator.CreateInstance(empty)!;
            Provenance.SetMaker(made, run);
            return made;
        }

        if (type is not INamedTypeSymbol { TypeArguments: [var elementType] } named || types.Find(elementType) is not { } item)
        {
            return NoCollection(type, operation, frame);
        }

        return MakeOne(operation, named, Sequences.Of(item), item, values, origins, frame);
    }

    private object? MakeOne(ICollectionExpressionOperation operation, INamedTypeSymbol type, Sequences made, Type item, List<object?> values, List<Origin?> origins, Frame frame)
    {
        switch (TypeMap.MetadataName(type.OriginalDefinition))
        {
            case "System.Collections.Immutable.ImmutableArray`1":
                return made.ImmutableArray(MakeArray(item, values, origins));
            case "System.Span`1" or "System.ReadOnlySpan`1":
                return MakeArray(item, values, origins);
            case "System.Collections.Generic.List`1" or "System.Collections.Generic.IList`1" or "System.Collections.Generic.ICollection`1":
                var list = made.List(values);
                Provenance.SetMaker(list, run);
                return list;
            case "System.Collections.Generic.IEnumerable`1" or "System.Collections.Generic.IReadOnlyCollection`1" or "System.Collections.Generic.IReadOnlyList`1":
                return made.ReadOnly(MakeArray(item, values, origins));
            case "System.Collections.Generic.HashSet`1":
                var set = InLibrary(() => made.HashSet(values), operation, frame);
                Provenance.SetMaker(set, run);
                return set;
            case "System.Collections.Immutable.ImmutableList`1":
                return made.ImmutableList(values);
            case "System.Collections.Generic.SortedSet`1" when item.IsPrimitive:
                var sorted = made.SortedSet(values);
                Provenance.SetMaker(sorted, run);
                return sorted;
            default:
                return NoCollection(type, operation, frame);
        }
    }

    private object? NoCollection(ITypeSymbol type, IOperation at, Frame frame) =>
        type.TypeKind == TypeKind.Error ? Unknown.Value : Refuse(at, frame, $"a collection expression for '{type.ToDisplayString()}' is not evaluated", "use an array, a list or ImmutableArray");

    private Array MakeArray(Type element, List<object?> values, List<Origin?> origins)
    {
        var array = Sequences.Of(element).Array(values);
        Provenance.SetMaker(array, run);
        if (!element.IsValueType)
        {
            Provenance.EnterElements(array, [.. origins]);
        }

        return array;
    }

    private object? ArrayCreation(IArrayCreationOperation operation, Frame frame)
    {
        if (TypeOf(operation, frame) is not IArrayTypeSymbol type || types.Find(type.ElementType) is not { } element)
        {
            return operation.Type?.TypeKind == TypeKind.Error ? Unknown.Value : Refuse(operation, frame, "an array of this element type is not evaluated", "use another element type");
        }

        if (type.Rank == 1 && operation.Initializer is { } initializer)
        {
            return ArrayInitializer(initializer, element, operation, frame);
        }

        return SizedArray(operation, type, element, frame);
    }

    private object? ArrayInitializer(IArrayInitializerOperation initializer, Type element, IOperation at, Frame frame)
    {
        var values = new List<object?>(initializer.ElementValues.Length);
        var origins = new List<Origin?>(initializer.ElementValues.Length);
        var unknown = false;
        foreach (var part in initializer.ElementValues)
        {
            var value = Evaluate(part, frame);
            unknown |= value is Unknown;
            values.Add(value);
            origins.Add(OriginAt(part, frame));
        }

        if (values.Count > limits.Elements)
        {
            throw OverElements(at, frame);
        }

        return unknown ? Unknown.Value : MakeArray(element, values, origins);
    }

    private object? SizedArray(IArrayCreationOperation operation, IArrayTypeSymbol type, Type element, Frame frame)
    {
        var sizes = new int[operation.DimensionSizes.Length];
        long total = 1;
        for (var i = 0; i < sizes.Length; i++)
        {
            var size = Evaluate(operation.DimensionSizes[i], frame);
            if (size is not (int or long or uint or short or byte or ushort or sbyte))
            {
                return Unknown.Value;
            }

            var length = Enums.Bits(size);
            if (length < 0)
            {
                throw Raise(new OverflowException(), operation, frame);
            }

            total = Math.Min(total * Math.Min(length, int.MaxValue), long.MaxValue / int.MaxValue);
            if (total > limits.Elements || length > limits.Elements)
            {
                throw OverElements(operation, frame);
            }

            sizes[i] = (int)length;
        }

        Charge(total, operation, frame);
        var array = Array.CreateInstance(element, sizes);
        Provenance.SetMaker(array, run);
        if (Default(type.ElementType) is var empty && (empty is UserObject or UserEnum || (empty is not null && IsTuple(empty))))
        {
            Fill(array, empty, new int[sizes.Length], 0);
        }

        if (operation.Initializer is { } initializer)
        {
            return FillArray(array, initializer, new int[sizes.Length], 0, frame) ? array : Unknown.Value;
        }

        return array;
    }

    private static void Fill(Array array, object value, int[] at, int dimension)
    {
        for (at[dimension] = 0; at[dimension] < array.GetLength(dimension); at[dimension]++)
        {
            if (dimension == at.Length - 1)
            {
                array.SetValue(value, at);
            }
            else
            {
                Fill(array, value, at, dimension + 1);
            }
        }
    }

    private bool FillArray(Array array, IArrayInitializerOperation initializer, int[] at, int dimension, Frame frame)
    {
        var known = true;
        for (var i = 0; i < initializer.ElementValues.Length; i++)
        {
            at[dimension] = i;
            if (initializer.ElementValues[i] is IArrayInitializerOperation nested)
            {
                known &= FillArray(array, nested, at, dimension + 1, frame);
                continue;
            }

            var value = Evaluate(initializer.ElementValues[i], frame);
            if (value is Unknown)
            {
                known = false;
            }
            else
            {
                array.SetValue(value, at);
            }
        }

        return known;
    }

    private object? ArrayElement(IArrayElementReferenceOperation operation, Frame frame)
    {
        var array = Evaluate(operation.ArrayReference, frame);
        if (array is Unknown)
        {
            return array;
        }

        if (array is null)
        {
            throw Raise(new NullReferenceException(), operation, frame);
        }

        if (operation.Indices.Length == 1 && Evaluate(operation.Indices[0], frame) is var single)
        {
            return single switch
            {
                Unknown => single,
                RangeValue range => SliceArray((Array)array, range, operation, frame),
                IndexValue index => GetElement((Array)array, [index.Offset(((Array)array).Length)], operation, frame),
                _ => GetElement((Array)array, [Enums.Bits(single!)], operation, frame),
            };
        }

        var indices = new long[operation.Indices.Length];
        for (var i = 0; i < indices.Length; i++)
        {
            var index = Evaluate(operation.Indices[i], frame);
            if (index is null or Unknown)
            {
                return Unknown.Value;
            }

            indices[i] = Enums.Bits(index);
        }

        return GetElement((Array)array, indices, operation, frame);
    }

    private object? GetElement(Array array, long[] indices, IOperation at, Frame frame)
    {
        CheckIndices(array, indices, at, frame);
        return Normalised(indices.Length == 1 ? array.GetValue((int)indices[0]) : array.GetValue(indices), at.Type);
    }

    private void CheckIndices(Array array, long[] indices, IOperation at, Frame frame)
    {
        for (var i = 0; i < indices.Length; i++)
        {
            if (indices[i] < 0 || indices[i] >= array.GetLength(i))
            {
                throw Raise(new IndexOutOfRangeException(), at, frame);
            }
        }
    }

    private Place ElementPlace(IArrayElementReferenceOperation element, Frame frame)
    {
        var evaluated = Evaluate(element.ArrayReference, frame);
        if (evaluated is null)
        {
            return new Place(() => throw Raise(new NullReferenceException(), element, frame), _ => throw Raise(new NullReferenceException(), element, frame));
        }

        var indices = new long[element.Indices.Length];
        for (var i = 0; i < indices.Length; i++)
        {
            var index = Evaluate(element.Indices[i], frame);
            if (evaluated is not Array || index is null or Unknown or RangeValue)
            {
                throw new RefusedSignal();
            }

            indices[i] = index is IndexValue value ? value.Offset(((Array)evaluated).Length) : Enums.Bits(index);
        }

        return ElementPlace((Array)evaluated, indices, element, frame);
    }

    /// <summary>An element. Whether there is one is asked when it is read or written, as C# does.</summary>
    private Place ElementPlace(Array array, long[] indices, IOperation at, Frame frame) => new(
        () => GetElement(array, indices, at, frame),
        value =>
        {
            CheckIndices(array, indices, at, frame);
            if (!Provenance.IsMadeBy(array, run))
            {
                RefuseMutation(array, at, frame);
            }

            if (value is Unknown)
            {
                throw new RefusedSignal();
            }

            if (value is not null && !array.GetType().GetElementType()!.IsInstanceOfType(value))
            {
                throw Raise(new ArrayTypeMismatchException(), at, frame);
            }

            array.SetValue(value, indices);
        });

    private object? SliceArray(Array array, RangeValue range, IOperation at, Frame frame)
    {
        var start = range.Start.Offset(array.Length);
        var length = range.End.Offset(array.Length) - start;
        if (start < 0 || length < 0 || start > array.Length - length)
        {
            throw Raise(new ArgumentOutOfRangeException("length"), at, frame);
        }

        Charge(length, at, frame);
        var slice = Array.CreateInstance(array.GetType().GetElementType()!, length);
        Array.Copy(array, start, slice, 0, length);
        Provenance.SetMaker(slice, run);
        return slice;
    }

    private object? ImplicitIndexer(IImplicitIndexerReferenceOperation operation, Frame frame)
    {
        var self = Evaluate(operation.Instance, frame);
        var argument = Evaluate(operation.Argument, frame);
        if (self is Unknown || argument is Unknown)
        {
            return Unknown.Value;
        }

        if (self is null)
        {
            throw Raise(new NullReferenceException(), operation, frame);
        }

        if (LengthOf(operation, self, frame) is not { } length)
        {
            return Unknown.Value;
        }

        switch (argument)
        {
            case IndexValue index when operation.IndexerSymbol is IPropertySymbol { GetMethod: { } getter }:
                return Call(Override(Resolve(getter, frame), self), self, [index.Offset(length)], operation, frame);
            case RangeValue range when operation.IndexerSymbol is IMethodSymbol slice:
                var start = range.Start.Offset(length);
                return Call(Override(Resolve(slice, frame), self), self, [start, range.End.Offset(length) - start], operation, frame);
            default:
                return Refuse(operation, frame, "this index is not evaluated", "use a plain index");
        }
    }

    private int? LengthOf(IImplicitIndexerReferenceOperation operation, object self, Frame frame) =>
        operation.LengthSymbol is IPropertySymbol { GetMethod: { } getter } && Call(Override(Resolve(getter, frame), self), self, [], operation, frame) is int length ? length : null;

    private Storage ImplicitIndexerPlace(IImplicitIndexerReferenceOperation operation, Frame frame)
    {
        var self = Evaluate(operation.Instance, frame);
        if (self is null or Unknown || Evaluate(operation.Argument, frame) is not IndexValue index || LengthOf(operation, self, frame) is not { } length || operation.IndexerSymbol is not IPropertySymbol property)
        {
            throw RefusePlace(operation, frame);
        }

        var at = index.Offset(length);
        return new Place(
            () => Call(Override(Resolve(property.GetMethod!, frame), self), self, [at], operation, frame),
            value => SetProperty(new Holder(self), property, value, operation, frame, arguments: [at]));
    }

    /// <summary>The elements of a sequence, each charged; library code that runs meanwhile has this as its site.</summary>
    private IEnumerable<object?> Elements(object? sequence, ITypeSymbol? elementType, IOperation at, Frame frame)
    {
        if (sequence is null)
        {
            throw Raise(new NullReferenceException(), at, frame);
        }

        if (sequence is string text)
        {
            foreach (var letter in text)
            {
                Step(at, frame);
                yield return letter;
            }

            yield break;
        }

        if (sequence is UserObject user)
        {
            foreach (var item in Duck(user, at, frame))
            {
                yield return item;
            }

            yield break;
        }

        if (IsOrderedByHash(sequence))
        {
            Refuse(at, frame, "the order of its elements depends on hash codes", "use a dictionary, a list or an array");
            throw new RefusedSignal();
        }

        if (sequence is not IEnumerable enumerable)
        {
            Refuse(at, frame, "this sequence is not evaluated", "use an array or a list");
            throw new RefusedSignal();
        }

        foreach (var item in InLibrary(Untyped(enumerable), at, frame))
        {
            Step(at, frame);
            yield return Normalised(item, elementType);
        }
    }

    private static IEnumerable<object?> Untyped(IEnumerable sequence)
    {
        foreach (var item in sequence)
        {
            yield return item;
        }
    }

    /// <summary>Does something in which library code may ask evaluated objects whether they are equal.</summary>
    private T InLibrary<T>(Func<T> work, IOperation at, Frame frame)
    {
        var outer = libraryCall;
        libraryCall = new LibraryCall(at, frame, OriginAt(at, frame));
        try
        {
            return work();
        }
        finally
        {
            libraryCall = outer;
        }
    }

    /// <summary>Goes through a library's sequence: what it throws is the evaluated program's exception.</summary>
    private IEnumerable<object?> InLibrary(IEnumerable<object?> items, IOperation at, Frame frame)
    {
        using var walk = items.GetEnumerator();
        var call = new LibraryCall(at, frame, OriginAt(at, frame));
        while (MoveNext(walk, call))
        {
            yield return walk.Current;
        }
    }

    private bool MoveNext(IEnumerator<object?> walk, LibraryCall call)
    {
        var outer = libraryCall;
        libraryCall = call;
        Exception raised;
        try
        {
            return walk.MoveNext();
        }
        catch (UnknownSignal)
        {
            // Elements that are not seen might have changed what follows.
            throw new RefusedSignal();
        }
        catch (Exception exception) when (exception is not Signal and not OperationCanceledException and not InsufficientExecutionStackException)
        {
            raised = exception;
        }
        finally
        {
            libraryCall = outer;
        }

        throw new ThrowSignal(raised.GetType().FullName!, raised.Message, call.Origin);
    }

    /// <summary>Where a datum, or an element of a collection datum, was written.</summary>
    public Origin? OriginOf(object owner, string? datum, int? index)
    {
        var record = Provenance.Find(owner);
        if (datum is null)
        {
            return record?.Created;
        }

        if (index is { } at && ElementOrigin(owner, datum, at) is { } element)
        {
            return element;
        }

        return record?[datum] ?? record?.Created;
    }

    private Origin? ElementOrigin(object owner, string datum, int index)
    {
        var value = owner.GetType().GetProperty(datum)?.GetValue(owner);
        var array = value switch
        {
            Array plain => plain,
            ValueType and IEnumerable when value.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>) => Sequences.Of(type.GetGenericArguments()[0]).Underlying(value),
            _ => null,
        };
        if (array is null || index < 0 || index >= array.Length)
        {
            return null;
        }

        return Provenance.Element(array, index) ?? (array.GetValue(index) is { } item ? Provenance.Find(item)?.Created : null);
    }
}
