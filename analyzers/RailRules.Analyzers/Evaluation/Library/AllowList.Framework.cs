using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace RailRules.Analyzers.Evaluation;

/// <content>The base class library's part of the list.</content>
internal static partial class AllowList
{
    private const string Number = "new op ToString CompareTo Equals Parse TryParse Abs Max Min Clamp Sign CopySign DivRem "
        + "IsNaN IsInfinity IsFinite IsNegative IsPositive IsPositiveInfinity IsNegativeInfinity IsInteger IsEvenInteger IsOddInteger IsNormal IsSubnormal IsPow2 "
        + "MaxValue MinValue Epsilon Zero One MinusOne NaN PositiveInfinity NegativeInfinity Pi E Tau "
        + "Round Floor Ceiling Truncate Sqrt Cbrt Pow Exp Log Log2 Log10 Hypot Sin Cos Tan Asin Acos Atan Atan2 Sinh Cosh Tanh "
        + "Add Subtract Multiply Divide Remainder Negate Lerp DegreesToRadians RadiansToDegrees PopCount LeadingZeroCount TrailingZeroCount RotateLeft RotateRight";

    private static Dictionary<string, AllowedType> MakeFramework()
    {
        var types = new Dictionary<string, AllowedType>(StringComparer.Ordinal);

        AllowedType Type(Type type)
        {
            if (!types.TryGetValue(type.FullName!, out var allowed))
            {
                types[type.FullName!] = allowed = new AllowedType(type);
            }

            return allowed;
        }

        void Named(string name, string members)
        {
            if (System.Type.GetType(name) is { } type)
            {
                Type(type).Add(Allowed.Constant, members);
            }
        }

        Type(typeof(object)).Add(Allowed.Constant, "new Equals ReferenceEquals ToString");
        Type(typeof(ValueType)).Add(Allowed.Constant, "Equals ToString");
        Type(typeof(Enum)).Add(Allowed.Constant, "Equals ToString CompareTo HasFlag");
        Type(typeof(void));
        foreach (var number in new[] { typeof(sbyte), typeof(byte), typeof(short), typeof(ushort), typeof(int), typeof(uint), typeof(long), typeof(ulong), typeof(IntPtr), typeof(UIntPtr), typeof(float), typeof(double), typeof(decimal) })
        {
            Type(number).Add(Allowed.Constant, Number);
        }

        Type(typeof(bool)).Add(Allowed.Constant, "ToString CompareTo Equals Parse TryParse TrueString FalseString");
        Type(typeof(char)).Add(Allowed.Constant, "ToString CompareTo Equals IsDigit IsLetter IsLetterOrDigit IsWhiteSpace IsUpper IsLower IsPunctuation IsSymbol IsControl IsNumber IsSeparator "
            + "ToUpperInvariant ToLowerInvariant ToUpper ToLower GetNumericValue IsAsciiDigit IsAsciiLetter IsAsciiLetterOrDigit IsAsciiLetterLower IsAsciiLetterUpper IsAsciiHexDigit IsBetween");
        AddText(Type);
        Type(typeof(Math)).Add(Allowed.Constant, "Abs Acos Acosh Asin Asinh Atan Atan2 Atanh BigMul BitDecrement BitIncrement Cbrt Ceiling Clamp CopySign Cos Cosh DivRem Exp Floor FusedMultiplyAdd "
            + "IEEERemainder ILogB Log Log10 Log2 Max MaxMagnitude Min MinMagnitude Pow Round ScaleB Sign Sin SinCos Sinh Sqrt Tan Tanh Truncate");
        Named("System.MathF", "Abs Acos Acosh Asin Asinh Atan Atan2 Atanh Cbrt Ceiling CopySign Cos Cosh Exp Floor Log Log10 Log2 Max Min Pow Round Sign Sin Sinh Sqrt Tan Tanh Truncate");
        Type(typeof(TimeSpan)).Add(Allowed.Constant, "new op ToString CompareTo Equals Compare Zero MaxValue MinValue FromDays FromHours FromMinutes FromSeconds FromMilliseconds FromMicroseconds FromTicks "
            + "Days Hours Minutes Seconds Milliseconds Ticks TotalDays TotalHours TotalMinutes TotalSeconds TotalMilliseconds Add Subtract Negate Duration Multiply Divide");
        Type(typeof(DateTime)).Add(Allowed.Constant, "new op ToString CompareTo Equals Compare MaxValue MinValue Year Month Day Hour Minute Second Millisecond DayOfWeek DayOfYear Date TimeOfDay Ticks "
            + "AddDays AddMonths AddYears AddHours AddMinutes AddSeconds AddMilliseconds AddTicks Add Subtract DaysInMonth IsLeapYear");
        Type(typeof(DayOfWeek));
        Type(typeof(DateTimeKind));
        Named("System.DateOnly", "new op ToString CompareTo Equals MaxValue MinValue Year Month Day DayOfWeek DayOfYear DayNumber AddDays AddMonths AddYears FromDayNumber");
        Type(typeof(MidpointRounding));
        Type(typeof(StringComparison));
        Type(typeof(StringSplitOptions));
        Type(typeof(IFormatProvider));
        Type(typeof(CultureInfo)).Add(Allowed.Constant, "InvariantCulture");
        Type(typeof(NumberStyles));
        Type(typeof(IFormattable)).Add(Allowed.Constant, "ToString");
        Type(typeof(IComparable)).Add(Allowed.Constant, "CompareTo");
        Type(typeof(IComparable<>)).Add(Allowed.Constant, "CompareTo");
        Type(typeof(IEquatable<>)).Add(Allowed.Constant, "Equals");
        Type(typeof(Nullable<>)).Add(Allowed.Constant, "new HasValue Value GetValueOrDefault Equals ToString");
        Type(typeof(Nullable)).Add(Allowed.Constant, "Compare Equals");
        Type(typeof(KeyValuePair<,>)).Add(Allowed.Constant, "new Key Value Deconstruct");
        Named("System.Collections.Generic.KeyValuePair", "Create");
        Type(typeof(StringComparer)).Add(Allowed.Constant, "Ordinal OrdinalIgnoreCase Compare Equals");
        Type(typeof(Comparer<>)).Add(Allowed.Constant, "Default Create Compare");
        Type(typeof(EqualityComparer<>)).Add(Allowed.Constant, "Default Equals");
        Type(typeof(IComparer<>)).Add(Allowed.Constant, "Compare");
        Type(typeof(IEqualityComparer<>)).Add(Allowed.Constant, "Equals");
        Type(typeof(IDisposable)).Add(Allowed.Constant, "Dispose");
        AddCollections(Type);
        AddDelegatesAndTuples(Type);
        AddExceptions(Type);
        return types;
    }

    private static void AddText(Func<Type, AllowedType> type)
    {
        type(typeof(string))
            .Add(Allowed.Constant, "Length Chars Empty IsNullOrEmpty")
            .Add(Allowed.Linear, "new op Substring Trim TrimStart TrimEnd Split Replace Contains StartsWith EndsWith IndexOf LastIndexOf IndexOfAny LastIndexOfAny ToUpper ToLower ToUpperInvariant ToLowerInvariant "
                + "PadLeft PadRight Concat Join Format IsNullOrWhiteSpace Equals CompareOrdinal Compare CompareTo Insert Remove ToCharArray ToString ReplaceLineEndings");
        type(typeof(StringBuilder))
            .Add(Allowed.Constant, "Length Chars")
            .Add(Allowed.Linear, "ToString Equals")
            .Add(Allowed.ChangesLinear, "new Append AppendLine AppendFormat AppendJoin Insert Remove Replace Clear set:Chars");
    }

    private static void AddCollections(Func<Type, AllowedType> type)
    {
        type(typeof(IEnumerable)).Add(Allowed.Linear, "GetEnumerator");
        type(typeof(IEnumerable<>)).Add(Allowed.Linear, "GetEnumerator");
        type(typeof(IEnumerator)).Add(Allowed.Changes, "MoveNext Current");
        type(typeof(IEnumerator<>)).Add(Allowed.Changes, "Current");
        type(typeof(ICollection)).Add(Allowed.Constant, "Count");
        type(typeof(ICollection<>)).Add(Allowed.Constant, "Count IsReadOnly").Add(Allowed.Linear, "Contains").Add(Allowed.Changes, "Add Clear").Add(Allowed.ChangesLinear, "Remove");
        type(typeof(IList<>)).Add(Allowed.Constant, "Item").Add(Allowed.Linear, "IndexOf").Add(Allowed.ChangesLinear, "Insert RemoveAt").Add(Allowed.Changes, "set:Item");
        type(typeof(IReadOnlyCollection<>)).Add(Allowed.Constant, "Count");
        type(typeof(IReadOnlyList<>)).Add(Allowed.Constant, "Item");
        type(typeof(IDictionary<,>)).Add(Allowed.Constant, "Item ContainsKey TryGetValue Keys Values").Add(Allowed.Changes, "Add Remove set:Item");
        type(typeof(IReadOnlyDictionary<,>)).Add(Allowed.Constant, "Item ContainsKey TryGetValue Keys Values");
        type(typeof(ISet<>)).Add(Allowed.Linear, "IsSubsetOf IsSupersetOf IsProperSubsetOf IsProperSupersetOf Overlaps SetEquals").Add(Allowed.Changes, "Add");
        if (Type.GetType("System.Collections.Generic.IReadOnlySet`1") is { } readOnlySet)
        {
            type(readOnlySet).Add(Allowed.Linear, "Contains IsSubsetOf IsSupersetOf IsProperSubsetOf IsProperSupersetOf Overlaps SetEquals");
        }

        type(typeof(IGrouping<,>)).Add(Allowed.Constant, "Key");
        type(typeof(ILookup<,>)).Add(Allowed.Constant, "Item Count Contains");
        type(typeof(IOrderedEnumerable<>));
        type(typeof(Lookup<,>)).Add(Allowed.Constant, "Item Count Contains");
        type(typeof(List<>))
            .Add(Allowed.Constant, "Item Count")
            .Add(Allowed.Changes, "Add set:Item")
            .Add(Allowed.Linear, "new Contains IndexOf LastIndexOf Find FindIndex FindLast FindLastIndex FindAll Exists TrueForAll BinarySearch ToArray GetRange ConvertAll ForEach AsReadOnly Slice GetEnumerator")
            .Add(Allowed.ChangesLinear, "AddRange Insert InsertRange Remove RemoveAt RemoveAll RemoveRange Reverse Sort Clear");
        type(typeof(System.Collections.ObjectModel.ReadOnlyCollection<>)).Add(Allowed.Constant, "Item Count").Add(Allowed.Linear, "new Contains IndexOf GetEnumerator");
        type(typeof(Dictionary<,>))
            .Add(Allowed.Constant, "Item Count ContainsKey TryGetValue Keys Values")
            .Add(Allowed.Linear, "new ContainsValue GetEnumerator")
            .Add(Allowed.Changes, "Add TryAdd Remove set:Item")
            .Add(Allowed.ChangesLinear, "Clear");
        type(typeof(Dictionary<,>.KeyCollection)).Add(Allowed.Constant, "Count");
        type(typeof(Dictionary<,>.ValueCollection)).Add(Allowed.Constant, "Count");
        if (Type.GetType("System.Collections.Generic.CollectionExtensions, System.Collections") is { } extensions)
        {
            type(extensions).Add(Allowed.Constant, "GetValueOrDefault").Add(Allowed.Linear, "AsReadOnly");
        }

        type(typeof(SortedDictionary<,>))
            .Add(Allowed.Constant, "Item Count ContainsKey TryGetValue Keys Values")
            .Add(Allowed.Linear, "new ContainsValue GetEnumerator")
            .Add(Allowed.Changes, "Add Remove set:Item")
            .Add(Allowed.ChangesLinear, "Clear");
        type(typeof(SortedDictionary<,>.KeyCollection)).Add(Allowed.Constant, "Count");
        type(typeof(SortedDictionary<,>.ValueCollection)).Add(Allowed.Constant, "Count");
        type(typeof(HashSet<>))
            .Add(Allowed.Constant, "Count Contains")
            .Add(Allowed.Linear, "new IsSubsetOf IsSupersetOf IsProperSubsetOf IsProperSupersetOf Overlaps SetEquals GetEnumerator")
            .Add(Allowed.Changes, "Add Remove")
            .Add(Allowed.ChangesLinear, "UnionWith IntersectWith ExceptWith SymmetricExceptWith RemoveWhere Clear");
        type(typeof(SortedSet<>))
            .Add(Allowed.Constant, "Count Contains Min Max")
            .Add(Allowed.Linear, "new IsSubsetOf IsSupersetOf Overlaps SetEquals GetEnumerator Reverse")
            .Add(Allowed.Changes, "Add Remove")
            .Add(Allowed.ChangesLinear, "UnionWith IntersectWith ExceptWith Clear");
        type(typeof(Queue<>)).Add(Allowed.Constant, "Count Peek").Add(Allowed.Linear, "new Contains ToArray GetEnumerator").Add(Allowed.Changes, "Enqueue Dequeue TryDequeue TryPeek Clear");
        type(typeof(Stack<>)).Add(Allowed.Constant, "Count Peek").Add(Allowed.Linear, "new Contains ToArray GetEnumerator").Add(Allowed.Changes, "Push Pop TryPop TryPeek Clear");
        type(typeof(ImmutableArray)).Add(Allowed.Linear, "Create CreateRange CreateBuilder ToImmutableArray BinarySearch");
        type(typeof(ImmutableArray<>))
            .Add(Allowed.Constant, "Item Length IsEmpty IsDefault IsDefaultOrEmpty Empty")
            .Add(Allowed.Linear, "op Equals Add AddRange Insert InsertRange Remove RemoveAt RemoveRange RemoveAll Replace SetItem Contains IndexOf LastIndexOf Sort Slice ToBuilder CastArray As OfType Clear GetEnumerator");
        type(typeof(ImmutableArray<>.Builder))
            .Add(Allowed.Constant, "Item Count")
            .Add(Allowed.Linear, "ToImmutable ToArray Contains IndexOf")
            .Add(Allowed.Changes, "Add set:Item")
            .Add(Allowed.ChangesLinear, "AddRange Insert Remove RemoveAt Reverse Sort Clear DrainToImmutable MoveToImmutable");
        type(typeof(ImmutableList)).Add(Allowed.Linear, "Create CreateRange ToImmutableList");
        type(typeof(ImmutableList<>))
            .Add(Allowed.Constant, "Item Count IsEmpty Empty")
            .Add(Allowed.Linear, "Add AddRange Insert Remove RemoveAt RemoveAll SetItem Replace Contains IndexOf Find Exists Reverse Sort GetRange Clear");
        type(typeof(ImmutableDictionary)).Add(Allowed.Linear, "Create CreateRange ToImmutableDictionary GetValueOrDefault");
        type(typeof(ImmutableDictionary<,>))
            .Add(Allowed.Constant, "Item Count IsEmpty Empty ContainsKey TryGetValue")
            .Add(Allowed.Linear, "Add AddRange Remove SetItem");
        type(typeof(ImmutableHashSet<>)).Add(Allowed.Constant, "Count IsEmpty Contains");
        type(typeof(Array)).Add(Allowed.Constant, "Length Rank Empty GetLength")
            .Add(Allowed.Linear, "IndexOf LastIndexOf Exists Find FindAll FindIndex FindLast FindLastIndex TrueForAll ConvertAll BinarySearch AsReadOnly Clone GetEnumerator GetUpperBound GetLowerBound GetValue");
        type(typeof(Enumerable)).Add(Allowed.Linear, "Aggregate AggregateBy All Any Append AsEnumerable Average Cast Chunk Concat Contains Count CountBy DefaultIfEmpty Distinct DistinctBy ElementAt ElementAtOrDefault Empty "
            + "Except ExceptBy First FirstOrDefault GroupBy GroupJoin Index Intersect IntersectBy Join Last LastOrDefault LongCount Max MaxBy Min MinBy OfType Order OrderBy OrderByDescending OrderDescending "
            + "Prepend Range Repeat Reverse Select SelectMany SequenceEqual Single SingleOrDefault Skip SkipLast SkipWhile Sum Take TakeLast TakeWhile ThenBy ThenByDescending ToArray ToDictionary "
            + "ToHashSet ToList ToLookup Union UnionBy Where Zip");
        type(typeof(System.Linq.ImmutableArrayExtensions)).Add(Allowed.Linear, "Aggregate All Any ElementAt ElementAtOrDefault First FirstOrDefault Last LastOrDefault Select SelectMany SequenceEqual Single SingleOrDefault ToArray ToDictionary Where");
    }

    private static void AddDelegatesAndTuples(Func<Type, AllowedType> type)
    {
        foreach (var plain in new[]
        {
            typeof(Action), typeof(Action<>), typeof(Action<,>), typeof(Action<,,>), typeof(Action<,,,>), typeof(Action<,,,,>), typeof(Action<,,,,,>), typeof(Action<,,,,,,>), typeof(Action<,,,,,,,>),
            typeof(Func<>), typeof(Func<,>), typeof(Func<,,>), typeof(Func<,,,>), typeof(Func<,,,,>), typeof(Func<,,,,,>), typeof(Func<,,,,,,>), typeof(Func<,,,,,,,>), typeof(Func<,,,,,,,,>),
            typeof(Predicate<>), typeof(Comparison<>), typeof(Converter<,>), typeof(Delegate), typeof(MulticastDelegate),
        })
        {
            type(plain);
        }

        foreach (var tuple in new[]
        {
            typeof(ValueTuple), typeof(ValueTuple<>), typeof(ValueTuple<,>), typeof(ValueTuple<,,>), typeof(ValueTuple<,,,>), typeof(ValueTuple<,,,,>), typeof(ValueTuple<,,,,,>), typeof(ValueTuple<,,,,,,>), typeof(ValueTuple<,,,,,,,>),
            typeof(Tuple), typeof(Tuple<>), typeof(Tuple<,>), typeof(Tuple<,,>), typeof(Tuple<,,,>), typeof(Tuple<,,,,>), typeof(Tuple<,,,,,>), typeof(Tuple<,,,,,,>),
        })
        {
            type(tuple).Add(Allowed.Constant, "new Create Equals CompareTo ToString Item1 Item2 Item3 Item4 Item5 Item6 Item7 Rest");
        }

        type(typeof(TupleExtensions)).Add(Allowed.Constant, "ToTuple ToValueTuple Deconstruct");
    }

    private static void AddExceptions(Func<Type, AllowedType> type)
    {
        foreach (var exception in new[]
        {
            typeof(Exception), typeof(SystemException), typeof(ArgumentException), typeof(ArgumentNullException), typeof(ArgumentOutOfRangeException), typeof(InvalidOperationException), typeof(NotSupportedException),
            typeof(FormatException), typeof(ArithmeticException), typeof(OverflowException), typeof(DivideByZeroException), typeof(IndexOutOfRangeException), typeof(KeyNotFoundException), typeof(NotImplementedException), typeof(ApplicationException),
            typeof(InvalidCastException), typeof(NullReferenceException), typeof(TimeoutException),
        })
        {
            type(exception).Add(Allowed.Constant, "new Message ParamName ThrowIfNull ThrowIfNullOrEmpty ThrowIfNullOrWhiteSpace ThrowIfNegative ThrowIfNegativeOrZero ThrowIfZero ThrowIfGreaterThan ThrowIfGreaterThanOrEqual "
                + "ThrowIfLessThan ThrowIfLessThanOrEqual ThrowIfEqual ThrowIfNotEqual");
        }
    }
}
