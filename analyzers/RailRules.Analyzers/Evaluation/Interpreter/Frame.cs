using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>One call: what all its blocks share.</summary>
internal sealed class Activation(MemberRun run, IMethodSymbol? method, object? self, Origin? site, TypeArguments? typeArguments)
{
    /// <summary>The evaluation to which the variables belong; no other may change them.</summary>
    public MemberRun Run { get; } = run;

    public IMethodSymbol? Method { get; } = method;

    /// <summary>The object on which the method runs; a struct's is replaced when the method changes it.</summary>
    public object? Self = self;

    /// <summary>The call that led here; null in a member's own initialiser.</summary>
    public Origin? Site { get; } = site;

    /// <summary>What stands for the type parameters in scope.</summary>
    public TypeArguments? TypeArguments { get; } = typeArguments;

    public object? Result;

    /// <summary>Where a break, continue or goto leads.</summary>
    public ILabelSymbol? Target;

    /// <summary>Receivers of conditional accesses and other implicit operands, innermost last.</summary>
    public Stack<object?> Implicit { get; } = new(0);
}

/// <summary>The variables of one block of one call, inside those of the blocks around it.</summary>
internal sealed class Frame(Frame? outer, Activation activation)
{
    private ISymbol[] names = [];
    private object?[] values = [];
    private int count;

    public Activation Activation { get; } = activation;

    public Frame? Outer { get; } = outer;

    /// <summary>A new variable in this block.</summary>
    public void Declare(ISymbol name, object? value)
    {
        var at = IndexOf(name);
        if (at < 0)
        {
            if (count == names.Length)
            {
                Array.Resize(ref names, Math.Max(4, count * 2));
                Array.Resize(ref values, Math.Max(4, count * 2));
            }

            at = count++;
            names[at] = name;
        }

        values[at] = value;
    }

    /// <summary>The block in which the variable stands, and its place there.</summary>
    public bool TryFind(ISymbol name, out Frame frame, out int index)
    {
        for (var at = this; at is not null; at = at.Outer)
        {
            if ((index = at.IndexOf(name)) >= 0)
            {
                frame = at;
                return true;
            }
        }

        frame = this;
        index = -1;
        return false;
    }

    /// <summary>The same variables with their values of now, for another call.</summary>
    public Frame CopyInto(Activation other) => new(Outer, other) { names = (ISymbol[])names.Clone(), values = (object?[])values.Clone(), count = count };

    public object? this[int index]
    {
        get => values[index];
        set => values[index] = value;
    }

    private int IndexOf(ISymbol name)
    {
        for (var i = 0; i < count; i++)
        {
            if (ReferenceEquals(names[i], name))
            {
                return i;
            }
        }

        for (var i = 0; i < count; i++)
        {
            if (names[i].Name == name.Name && SymbolEqualityComparer.Default.Equals(names[i].OriginalDefinition, name.OriginalDefinition))
            {
                return i;
            }
        }

        return -1;
    }
}

/// <summary>What stands for type parameters.</summary>
internal sealed class TypeArguments
{
    private readonly List<KeyValuePair<ITypeParameterSymbol, ITypeSymbol>> map = [];

    public void Add(ITypeParameterSymbol parameter, ITypeSymbol argument) => map.Add(new(parameter, argument));

    public ITypeSymbol? Find(ITypeParameterSymbol parameter)
    {
        foreach (var entry in map)
        {
            if (SymbolEqualityComparer.Default.Equals(entry.Key, parameter))
            {
                return entry.Value;
            }
        }

        return null;
    }

    public void AddAll(TypeArguments? other)
    {
        if (other is not null)
        {
            map.AddRange(other.map);
        }
    }
}
