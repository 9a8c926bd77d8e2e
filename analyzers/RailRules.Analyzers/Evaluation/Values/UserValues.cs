using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RailRules.Analyzers.Evaluation;

/// <summary>
/// An object of a type that the evaluated source declares. A struct's object is never changed in place:
/// a change makes a copy and stores it where the struct stood.
/// </summary>
internal sealed class UserObject(INamedTypeSymbol type, TypeLayout layout, Interpreter interpreter) : IEquatable<UserObject>, IComparable<UserObject>, IComparable, IFormattable
{
    public INamedTypeSymbol Type { get; } = type;

    public TypeLayout Layout { get; } = layout;

    /// <summary>The evaluation that made the object; no other may change it.</summary>
    public MemberRun? Maker { get; init; }

    public object?[] Slots { get; private init; } = new object?[layout.Count];

    public UserObject Copy(MemberRun maker) => new(Type, Layout, interpreter) { Maker = maker, Slots = (object?[])Slots.Clone() };

    public bool Equals(UserObject? other) => interpreter.UserEquals(this, other);

    public override bool Equals(object? obj) => interpreter.UserEquals(this, obj);

    public override int GetHashCode() => interpreter.UserHash(this);

    public int CompareTo(UserObject? other) => interpreter.UserCompare(this, other);

    public int CompareTo(object? obj) => interpreter.UserCompare(this, obj);

    public override string ToString() => interpreter.UserText(this);

    public string ToString(string? format, IFormatProvider? formatProvider) => interpreter.UserText(this, format);
}

/// <summary>A value of an enumeration that the evaluated source declares. As a struct, so that library code sees a value type with a default.</summary>
internal readonly struct UserEnum(INamedTypeSymbol? type, long bits) : IEquatable<UserEnum>, IComparable<UserEnum>, IComparable, IFormattable
{
    public INamedTypeSymbol? Type { get; } = type;

    /// <summary>The value; an unsigned 64 bit one by its bits.</summary>
    public long Bits { get; } = bits;

    public bool Equals(UserEnum other) => Bits == other.Bits;

    public override bool Equals(object? obj) => obj is UserEnum other && Bits == other.Bits && (Type is null || other.Type is null || SymbolEqualityComparer.Default.Equals(Type, other.Type));

    public override int GetHashCode() => Bits.GetHashCode();

    public int CompareTo(UserEnum other) =>
        (Type ?? other.Type)?.EnumUnderlyingType?.SpecialType == SpecialType.System_UInt64 ? ((ulong)Bits).CompareTo((ulong)other.Bits) : Bits.CompareTo(other.Bits);

    public int CompareTo(object? obj) => obj is null ? 1 : obj is UserEnum other ? CompareTo(other) : throw new ArgumentException("Object must be the same type as the enum.");

    public override string ToString() => Enums.Text(this);

    public string ToString(string? format, IFormatProvider? formatProvider) => Enums.Text(this, format);
}

/// <summary><c>System.Index</c> as the interpreter holds it.</summary>
internal readonly record struct IndexValue(int Value, bool FromEnd)
{
    public int Offset(int length) => FromEnd ? length - Value : Value;

    public override string ToString() => FromEnd ? "^" + ((uint)Value).ToString(System.Globalization.CultureInfo.InvariantCulture) : ((uint)Value).ToString(System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary><c>System.Range</c> as the interpreter holds it.</summary>
internal readonly record struct RangeValue(IndexValue Start, IndexValue End)
{
    public override string ToString() => Start + ".." + End;
}

/// <summary>Where the fields of a source type's objects lie, inherited ones first.</summary>
internal sealed class TypeLayout
{
    private readonly Dictionary<ISymbol, int> slots = new(SymbolEqualityComparer.Default);
    private readonly HashSet<ISymbol> captured = new(SymbolEqualityComparer.Default);

    public TypeLayout(INamedTypeSymbol type)
    {
        var chain = new Stack<INamedTypeSymbol>();
        for (var at = type.OriginalDefinition; at is not null && !at.DeclaringSyntaxReferences.IsEmpty; at = at.BaseType?.OriginalDefinition)
        {
            chain.Push(at);
        }

        if (type.IsAnonymousType)
        {
            chain.Clear();
            chain.Push(type);
        }

        foreach (var level in chain)
        {
            // Parameters of a primary constructor live on in the object.
            foreach (var constructor in level.InstanceConstructors)
            {
                if (!level.IsRecord && !constructor.DeclaringSyntaxReferences.IsEmpty && constructor.DeclaringSyntaxReferences[0].GetSyntax() is TypeDeclarationSyntax)
                {
                    foreach (var parameter in constructor.Parameters)
                    {
                        Add(parameter, null);
                        if (!level.GetMembers($"<{parameter.Name}>P").IsEmpty)
                        {
                            captured.Add(parameter);
                        }
                    }
                }
            }

            foreach (var member in level.GetMembers())
            {
                switch (member)
                {
                    case IFieldSymbol { IsStatic: false } field when !field.IsImplicitlyDeclared || field.AssociatedSymbol is not null:
                        // The field behind an automatic property shares the property's slot.
                        var key = field.AssociatedSymbol is IPropertySymbol or IEventSymbol ? field.AssociatedSymbol : field;
                        Add(key, field);
                        break;
                    case IPropertySymbol { IsStatic: false } property when type.IsAnonymousType:
                        Add(property, null);
                        break;
                }
            }
        }
    }

    public int Count => Fields.Count;

    /// <summary>Fields, or automatic properties for their fields, in order.</summary>
    public List<ISymbol> Fields { get; } = [];

    /// <summary>Whether a slot counts when objects are compared by their fields: all but parameters that the running object does not keep.</summary>
    public bool Counts(int slot) => Fields[slot] is not IParameterSymbol || captured.Contains(Fields[slot]);

    public bool TryGet(ISymbol fieldOrProperty, out int slot) => slots.TryGetValue(fieldOrProperty.OriginalDefinition, out slot) || slots.TryGetValue(fieldOrProperty, out slot);

    private void Add(ISymbol key, ISymbol? second)
    {
        if (!slots.ContainsKey(key))
        {
            slots[key] = Fields.Count;
            Fields.Add(key);
        }

        if (second is not null && !slots.ContainsKey(second))
        {
            slots[second] = slots[key];
        }
    }
}
