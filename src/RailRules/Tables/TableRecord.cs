using System.Collections.Immutable;
using System.Reflection;

namespace RailRules.Tables;

/// <summary>A record of which a table may hold parts, with the columns that its data give. All of it is read from the model; there is no list to keep.</summary>
internal sealed class TableRecord
{
    private static readonly Lazy<ImmutableArray<TableRecord>> Records = new(FindAll);
    private readonly Lazy<ImmutableArray<TableColumn>> columns;
    private readonly ConstructorInfo constructor;

    private TableRecord(Type type, ConstructorInfo constructor)
    {
        Type = type;
        this.constructor = constructor;
        columns = new Lazy<ImmutableArray<TableColumn>>(() => [.. InitProperties(Type).Where(property => ReasonLeftOut(property) is null).SelectMany(ColumnsOf)]);
    }

    /// <summary>Every record of the model that says what a type of part is: it has a part number and is named after its declaring member.</summary>
    public static ImmutableArray<TableRecord> All => Records.Value;

    public Type Type { get; }

    /// <summary>What the header's first cell says: Fuse.</summary>
    public string Name => Type.Name;

    /// <summary>The columns that a table may have besides the part number.</summary>
    public ImmutableArray<TableColumn> Columns => columns.Value;

    public static TableRecord? Find(string name) => All.FirstOrDefault(record => record.Name == name);

    public TableColumn? FindColumn(string name) => Columns.FirstOrDefault(column => column.Name == name);

    /// <summary>A part without data.</summary>
    public object Create(string partNumber)
    {
        var part = constructor.Invoke([partNumber]);
        Type.GetProperty(nameof(Element.PartNumber))!.SetValue(part, partNumber);
        return part;
    }

    /// <summary>The public properties that an initialiser sets, in the order in which the record declares them, its own first.</summary>
    public static IEnumerable<PropertyInfo> InitProperties(Type type) =>
        type.GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(property => property.SetMethod is { IsPublic: true } && property.GetIndexParameters().Length == 0);

    /// <summary>Why tables have no column for a datum; null where they have one.</summary>
    public static string? ReasonLeftOut(PropertyInfo property) => property.Name switch
    {
        nameof(Element.PartNumber) => "it is the first column, headed by the record's name",
        nameof(Element.Designator) => "it belongs to a place, not to a type of part",
        nameof(Element.Surroundings) => "it belongs to a place, not to a type of part",
        nameof(Element.Policy) => "it belongs to a place, not to a type of part",
        _ => null,
    };

    private static ImmutableArray<TableRecord> FindAll() =>
    [
        .. typeof(Element).Assembly.GetTypes()
            // A group is made of parts that each have a row of their own.
            .Where(type => type is { IsPublic: true, IsSealed: true, IsAbstract: false } && type.GetProperty(nameof(Element.PartNumber)) is not null && type != typeof(ParallelGroup))
            .Select(type => (Type: type, Constructor: type.GetConstructor([typeof(string)])))
            .Where(found => found.Constructor is not null)
            .OrderBy(found => found.Type.Name, StringComparer.Ordinal)
            .Select(found => new TableRecord(found.Type, found.Constructor!)),
    ];

    /// <summary>One column, or where a datum is a record with lists in it a column for each of its data, <c>SafeOperatingArea.Points</c>.</summary>
    private static IEnumerable<TableColumn> ColumnsOf(PropertyInfo property)
    {
        if (TableShape.Of(property.PropertyType) is { } shape)
        {
            return [new TableColumn(property.Name, property, null, shape)];
        }

        return property.PropertyType.Assembly == typeof(Element).Assembly && property.PropertyType.GetConstructor(Type.EmptyTypes) is not null
            ? InitProperties(property.PropertyType)
                .Select(inner => (Inner: inner, Shape: TableShape.Of(inner.PropertyType)))
                .Where(found => found.Shape is not null)
                .Select(found => new TableColumn(property.Name + "." + found.Inner.Name, property, found.Inner, found.Shape!))
            : [];
    }
}

/// <summary>A column that a table may have.</summary>
/// <param name="Name">Its name in the header, without the unit.</param>
/// <param name="Property">The datum of the part.</param>
/// <param name="Inner">The datum of the datum, where the column states only that; null else.</param>
/// <param name="Shape">How its cells are written.</param>
internal sealed record TableColumn(string Name, PropertyInfo Property, PropertyInfo? Inner, TableShape Shape)
{
    /// <summary>The datum of the part: the property's name.</summary>
    public string Datum => Property.Name;

    /// <summary>Puts a value into a part.</summary>
    public void Set(object part, object value)
    {
        if (Inner is null)
        {
            Property.SetValue(part, value);
            return;
        }

        var holder = Property.GetValue(part);
        if (holder is null)
        {
            Property.SetValue(part, holder = Activator.CreateInstance(Property.PropertyType)!);
        }

        Inner.SetValue(holder, value);
    }

    /// <summary>
    /// Reads the unit part of a header. A single value needs its unit; of a value with conditions the first does, and where the header names no unit for a
    /// condition it counts in the first unit of its kind: V, A, s, °C, m.
    /// </summary>
    /// <param name="written">What stands in the brackets; null where there are none.</param>
    /// <param name="units">A unit for each of the shape's scalars.</param>
    /// <returns>What is wrong; null where nothing is.</returns>
    public string? ReadUnits(string? written, out TableUnit[] units)
    {
        var scalars = Shape.Scalars;
        units = [.. scalars.Select(scalar => scalar.Units.Length > 0 ? scalar.Units[0] : TableUnit.None)];
        if (written is null)
        {
            return scalars.Length > 0 && scalars[0].NeedsUnit ? $"{Name} needs its unit, for example '{Name} [{Example}]'" : null;
        }

        if (scalars.All(scalar => scalar.Units.Length == 0))
        {
            return $"{Name} has no unit: it is {Shape.Form}";
        }

        var symbols = written.Split(Shape.UnitSeparator);
        if (symbols.Length > scalars.Length)
        {
            return $"'[{written}]' names more units than {Name} has: {Shape.Form}";
        }

        for (var i = 0; i < symbols.Length; i++)
        {
            var symbol = TableUnit.Spell(symbols[i]);
            if (symbol.Length == 0 && i > 0)
            {
                continue;
            }

            if (scalars[i].Units.FirstOrDefault(unit => unit.Symbol == symbol) is not { } unit)
            {
                return scalars[i].Units.Length == 0
                    ? $"'[{written}]': {scalars[i].Kind} has no unit"
                    : $"'[{symbols[i].Trim()}]' is no unit of {scalars[i].Kind}; {Name} is stated in {string.Join(", ", scalars[i].Units.Select(known => known.Symbol))}";
            }

            units[i] = unit;
        }

        return null;
    }

    /// <summary>The header with its units in their usual spelling.</summary>
    public string Header(TableUnit[] units)
    {
        var named = units.Length;
        while (named > 0 && units[named - 1].Symbol is "1" or "")
        {
            named--;
        }

        return named == 0 ? Name : $"{Name} [{string.Join(Shape.UnitSeparator.ToString(), units.Take(named).Select(unit => unit.Symbol))}]";
    }

    private string Example => string.Join(Shape.UnitSeparator.ToString(), Shape.Scalars.Select(scalar => scalar.Units.Length > 0 ? scalar.Units[0].Symbol : ""));
}
