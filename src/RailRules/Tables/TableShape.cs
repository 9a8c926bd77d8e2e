using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;

namespace RailRules.Tables;

/// <summary>How the cells of a column are written.</summary>
internal abstract class TableShape
{
    /// <summary>The parts of a value that a unit or number belongs to, in the order in which the header may name their units.</summary>
    public virtual ImmutableArray<TableScalar> Scalars => [];

    /// <summary>What stands between the units in the header.</summary>
    public virtual char UnitSeparator => ':';

    /// <summary>The form in words, for documentation and messages, e.g. <c>current@voltage@time constant AC|DC</c>.</summary>
    public abstract string Form { get; }

    /// <summary>Reads a cell that says something.</summary>
    /// <param name="text">What the cell says, without blanks around it.</param>
    /// <param name="units">A unit for each of <see cref="Scalars"/>.</param>
    /// <param name="value">The value; null where it cannot be read.</param>
    /// <returns>What is wrong, without a final period; null where nothing is.</returns>
    public abstract string? Read(string text, TableUnit[] units, out object? value);

    /// <summary>The shape for data of a type; null where tables have none.</summary>
    public static TableShape? Of(Type type)
    {
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        if (TableScalar.Of(inner) is { } scalar)
        {
            return scalar;
        }

        if (inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(ImmutableArray<>))
        {
            var item = inner.GetGenericArguments()[0];
            return item == typeof(string) ? new TableNames()
                : item == typeof(Element) ? new TablePartNumbers()
                : TableComposite.Of(item) is { } composite ? new TableList(composite, item)
                : null;
        }

        return TableComposite.Of(inner);
    }

    protected static string Shorten(string text) => text.Length <= 40 ? text : text.Substring(0, 37) + "...";
}

/// <summary>A single value.</summary>
internal abstract class TableScalar : TableShape
{
    public override ImmutableArray<TableScalar> Scalars => [this];

    /// <summary>The units that may be named; empty: none.</summary>
    public virtual TableUnit[] Units => [];

    /// <summary>Whether the header must name the unit of a column that holds just this value.</summary>
    public virtual bool NeedsUnit => false;

    /// <summary>The kind of quantity in words, e.g. current.</summary>
    public abstract string Kind { get; }

    public override string Form => Kind;

    public sealed override string? Read(string text, TableUnit[] units, out object? value) => Read(text, units.Length > 0 ? units[0] : null, out value);

    public abstract string? Read(string text, TableUnit? unit, out object? value);

    public new static TableScalar? Of(Type type)
    {
        if (type == typeof(string))
        {
            return new TextScalar();
        }

        if (type == typeof(bool))
        {
            return new BooleanScalar();
        }

        if (type == typeof(int))
        {
            return new IntegerScalar();
        }

        if (type == typeof(double))
        {
            return new NumberScalar();
        }

        if (type.IsEnum)
        {
            return new EnumScalar(type);
        }

        if (TableQuantity.Find(type) is { } quantity)
        {
            return new QuantityScalar(quantity);
        }

        return type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Band<>) && TableQuantity.Find(type.GetGenericArguments()[0]) is { } banded ? new BandScalar(banded) : null;
    }

    /// <summary>Reads a number: a point, no thousands separators, an exponent where wanted; the true minus sign counts as one.</summary>
    protected static string? ReadNumber(string text, string kind, out double number)
    {
        number = 0;
        var digits = text.Trim().Replace('\u2212', '-');
        if (!IsNumber(digits))
        {
            return digits.IndexOf(',') >= 0 && IsNumber(digits.Replace(',', '.'))
                ? $"'{Shorten(text)}' is not a {kind}: a number is written with a point, {digits.Replace(',', '.')}"
                : $"'{Shorten(text)}' is not a {kind}";
        }

        return double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && !double.IsInfinity(number) && !double.IsNaN(number)
            ? null
            : $"'{Shorten(text)}' is too large for a {kind}";
    }

    private static bool IsNumber(string text)
    {
        var i = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        var start = i;
        i = Digits(text, i);
        var digits = i - start;
        if (i < text.Length && text[i] == '.')
        {
            var fraction = Digits(text, i + 1);
            digits += fraction - i - 1;
            i = fraction;
        }

        if (digits > 0 && i < text.Length && text[i] is 'e' or 'E')
        {
            i++;
            i += i < text.Length && text[i] is '+' or '-' ? 1 : 0;
            var exponent = Digits(text, i);
            digits = exponent - i;
            i = exponent;
        }

        return digits > 0 && i == text.Length;
    }

    private static int Digits(string text, int from)
    {
        while (from < text.Length && text[from] is >= '0' and <= '9')
        {
            from++;
        }

        return from;
    }

    private sealed class TextScalar : TableScalar
    {
        public override string Kind => "text";

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            value = text;
            return null;
        }
    }

    private sealed class BooleanScalar : TableScalar
    {
        public override string Kind => "yes or no";

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            value = text.ToUpperInvariant() switch { "YES" or "TRUE" => true, "NO" or "FALSE" => false, _ => null };
            return value is null ? $"'{Shorten(text)}' is neither yes nor no" : null;
        }
    }

    private sealed class IntegerScalar : TableScalar
    {
        public override string Kind => "whole number";

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            value = null;
            if (ReadNumber(text, Kind, out var number) is { } fault)
            {
                return fault;
            }

            if (number != Math.Truncate(number) || Math.Abs(number) > int.MaxValue)
            {
                return $"'{Shorten(text)}' is not a {Kind}";
            }

            value = (int)number;
            return null;
        }
    }

    private sealed class NumberScalar : TableScalar
    {
        public override string Kind => "number";

        public override TableUnit[] Units => TableUnit.OfNumbers;

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            var fault = ReadNumber(text, Kind, out var number);
            value = fault is null ? (unit ?? Units[0]).Make(number) : null;
            return fault;
        }
    }

    /// <summary>A name of an enumeration. Case, blanks and hyphens do not matter; a leading digit may be written as one: 5VA, V-0, bolted locked.</summary>
    private sealed class EnumScalar(Type type) : TableScalar
    {
        private readonly string[] names = Enum.GetNames(type);

        public override string Kind => string.Join("|", names);

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            var wanted = Bare(text);
            foreach (var name in names)
            {
                if (Bare(name) == wanted)
                {
                    value = Enum.Parse(type, name);
                    return null;
                }
            }

            value = null;
            return $"'{Shorten(text)}' is none of {string.Join(", ", names)}";
        }

        private static string Bare(string text)
        {
            var bare = text.ToUpperInvariant().Replace(" ", "").Replace("-", "").Replace("_", "");
            return bare.Length > 0 && bare[0] == '5' ? "FIVE" + bare.Substring(1) : bare;
        }
    }

    private class QuantityScalar(TableQuantity quantity) : TableScalar
    {
        protected TableQuantity Quantity { get; } = quantity;

        public override string Kind => Quantity.Kind;

        public override TableUnit[] Units => Quantity.Units;

        public override bool NeedsUnit => true;

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            unit ??= Units[0];
            var fault = ReadNumber(text, $"{Kind} in {unit.Symbol}", out var number);
            value = fault is null ? unit.Make(number) : null;
            return fault;
        }
    }

    /// <summary>Lowest..highest or lowest..typical..highest; a single value is a band of no width.</summary>
    private sealed class BandScalar(TableQuantity quantity) : QuantityScalar(quantity)
    {
        private static readonly string[] Dots = [".."];

        public override string Form => $"{Kind}, min..max or min..typical..max";

        public override string? Read(string text, TableUnit? unit, out object? value)
        {
            unit ??= Units[0];
            value = null;
            var parts = text.Split(Dots, StringSplitOptions.None);
            if (parts.Length > 3)
            {
                return $"'{Shorten(text)}' is not a band: min..max or min..typical..max";
            }

            var ends = new object[parts.Length];
            for (var i = 0; i < parts.Length; i++)
            {
                if (ReadNumber(parts[i], $"{Kind} in {unit.Symbol}" + (parts.Length > 1 ? ", nor a band of it" : ""), out var number) is { } fault)
                {
                    return fault;
                }

                ends[i] = unit.Make(number);
            }

            value = Quantity.Band(ends[0], ends.Length == 2 ? null : ends[ends.Length / 2], ends[ends.Length - 1]);
            return null;
        }
    }
}

/// <summary>A record of several values: a point <c>25:1.00</c>, or a value with its conditions <c>10000@80@0.002 DC</c>.</summary>
internal sealed class TableComposite : TableShape
{
    private readonly ConstructorInfo constructor;
    private readonly ImmutableArray<Component> components;
    private readonly bool positional;

    private TableComposite(ConstructorInfo constructor, ImmutableArray<Component> components, bool positional)
    {
        this.constructor = constructor;
        this.components = components;
        this.positional = positional;
        Scalars = [.. Numeric.Select(component => component.Scalar)];
    }

    public override ImmutableArray<TableScalar> Scalars { get; }

    public override char UnitSeparator => positional ? ':' : '@';

    public override string Form => string.Join(UnitSeparator.ToString(), Numeric.Select(component => component.Name)) + string.Concat(components.Where(component => component.IsWord).Select(component => UnitSeparator + component.Scalar.Kind));

    private IEnumerable<Component> Numeric => components.Where(component => !component.IsWord);

    /// <summary>The properties that a value states, for documentation.</summary>
    public IEnumerable<string> Names => components.Select(component => component.Name);

    /// <summary>The shape for records whose data are all single values; null for other types.</summary>
    public new static TableComposite? Of(Type type)
    {
        if (type.Assembly != typeof(Element).Assembly || type.IsAbstract || !type.IsClass)
        {
            return null;
        }

        foreach (var constructor in type.GetConstructors())
        {
            var parameters = constructor.GetParameters();
            if (parameters.Length >= 2 && parameters.All(parameter => type.GetProperty(parameter.Name!)?.PropertyType == parameter.ParameterType))
            {
                var points = parameters.Select(parameter => Component.Of(parameter.Name!, parameter.ParameterType, null)).ToImmutableArray();
                return points.Any(component => component is null) ? null : new TableComposite(constructor, points!, positional: true);
            }
        }

        if (type.GetConstructor(Type.EmptyTypes) is not { } empty)
        {
            return null;
        }

        var components = TableRecord.InitProperties(type).Select(property => Component.Of(property.Name, property.PropertyType, property)).ToImmutableArray();
        return components.IsEmpty || components.Any(component => component is null) ? null : new TableComposite(empty, components!, positional: false);
    }

    public override string? Read(string text, TableUnit[] units, out object? value)
    {
        value = null;
        var values = new object?[components.Length];
        var place = 0;
        foreach (var part in text.Split(UnitSeparator))
        {
            var written = part.Trim();
            if (!positional && FindWord(written, out var word, out var named))
            {
                if (values[word] is not null)
                {
                    return $"'{Shorten(text)}' says twice {components[word].Name}";
                }

                values[word] = named;
                continue;
            }

            var at = NextNumeric(ref place);
            if (at < 0)
            {
                return $"'{Shorten(text)}' has too many parts: {Form}";
            }

            if (written.Length == 0)
            {
                continue;
            }

            var fault = components[at].Scalar.Read(written, units.Length >= place ? units[place - 1] : null, out values[at]);
            if (fault is not null)
            {
                return $"{fault}, in '{Shorten(text)}': {Form}";
            }
        }

        for (var i = 0; i < components.Length; i++)
        {
            if (values[i] is null && components[i].IsNeeded(first: i == 0))
            {
                return $"'{Shorten(text)}' lacks {components[i].Name}: {Form}";
            }
        }

        value = Make(values);
        return null;
    }

    private object Make(object?[] values)
    {
        if (positional)
        {
            return constructor.Invoke(values);
        }

        var made = constructor.Invoke(null);
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] is { } stated)
            {
                components[i].Property!.SetValue(made, stated);
            }
        }

        return made;
    }

    private int NextNumeric(ref int place)
    {
        var seen = 0;
        for (var i = 0; i < components.Length; i++)
        {
            if (!components[i].IsWord && seen++ == place)
            {
                place++;
                return i;
            }
        }

        return -1;
    }

    private bool FindWord(string written, out int index, out object? value)
    {
        for (index = 0; index < components.Length; index++)
        {
            if (components[index].IsWord && written.Length > 0 && components[index].Scalar.Read(written, (TableUnit?)null, out value) is null)
            {
                return true;
            }
        }

        value = null;
        return false;
    }

    private sealed record Component(string Name, TableScalar Scalar, bool IsOptional, PropertyInfo? Property, bool IsWord)
    {
        public static Component? Of(string name, Type type, PropertyInfo? property)
        {
            var inner = Nullable.GetUnderlyingType(type);
            return TableScalar.Of(inner ?? type) is { } scalar ? new Component(name, scalar, inner is not null, property, (inner ?? type).IsEnum) : null;
        }

        /// <summary>A value must begin with its first part; further ones where the record cannot do without. A word has its default.</summary>
        public bool IsNeeded(bool first) => first || (!IsOptional && Property is null);
    }
}

/// <summary>Several values, with blanks between them.</summary>
internal sealed class TableList(TableComposite item, Type type) : TableShape
{
    private static readonly MethodInfo Create = typeof(TableList).GetMethod(nameof(MakeArray), BindingFlags.Static | BindingFlags.NonPublic)!;
    private readonly Func<IList, object> collect = (Func<IList, object>)Create.MakeGenericMethod(type).CreateDelegate(typeof(Func<IList, object>));

    public override ImmutableArray<TableScalar> Scalars => item.Scalars;

    public override char UnitSeparator => item.UnitSeparator;

    public override string Form => item.Form + ", several with blanks between them";

    public override string? Read(string text, TableUnit[] units, out object? value)
    {
        var items = new List<object>();
        foreach (var written in text.Split(null as char[], StringSplitOptions.RemoveEmptyEntries))
        {
            if (item.Read(written, units, out var made) is { } fault)
            {
                value = null;
                return fault;
            }

            items.Add(made!);
        }

        value = collect(items);
        return null;
    }

    private static object MakeArray<T>(IList items) => ImmutableArray.CreateRange(items.Cast<T>());
}

/// <summary>Names with semicolons between them; <c>none</c> states that there is none.</summary>
internal sealed class TableNames : TableShape
{
    public override string Form => "names with semicolons between them, or none";

    public override string? Read(string text, TableUnit[] units, out object? value)
    {
        value = string.Equals(text, "none", StringComparison.OrdinalIgnoreCase) ? ImmutableArray<string>.Empty : Split(text);
        return null;
    }

    public static ImmutableArray<string> Split(string text) => [.. text.Split(';').Select(name => name.Trim()).Where(name => name.Length > 0)];
}

/// <summary>Part numbers of the same table, with semicolons between them.</summary>
internal sealed class TablePartNumbers : TableShape
{
    public override string Form => "part numbers of this table with semicolons between them";

    public override string? Read(string text, TableUnit[] units, out object? value)
    {
        value = TableNames.Split(text);
        return null;
    }
}
