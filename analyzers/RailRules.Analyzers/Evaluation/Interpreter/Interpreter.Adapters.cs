using System.Collections;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <content>Objects of the source that library code is to call: comparers and sequences.</content>
internal sealed partial class Interpreter
{
    /// <summary>
    /// An argument as the library takes it: indexes and ranges as the runtime has them, comparers and sequences of the source behind the library's interface.
    /// Null where the library could not call the object.
    /// </summary>
    private object? Adapted(object argument, Type parameter, IOperation at, Frame frame)
    {
        if (parameter.IsInstanceOfType(argument) || parameter.IsByRef)
        {
            return argument;
        }

        switch (argument)
        {
            case IndexValue index when parameter.FullName == "System.Index":
                return Activator.CreateInstance(parameter, index.Value, index.FromEnd);
            case RangeValue range when parameter.FullName == "System.Range" && parameter.Assembly.GetType("System.Index") is { } type:
                return Activator.CreateInstance(parameter, Activator.CreateInstance(type, range.Start.Value, range.Start.FromEnd), Activator.CreateInstance(type, range.End.Value, range.End.FromEnd));
            case UserObject user when parameter is { IsInterface: true, IsGenericType: true }:
                var definition = parameter.GetGenericTypeDefinition();
                var element = parameter.GetGenericArguments()[0];
                if (definition == typeof(IEnumerable<>) && ImplementsOver(user.Type, "IEnumerable", element))
                {
                    return Sequences.Of(element).Lazy(Walked(user, at, frame));
                }

                var comparer = definition == typeof(IComparer<>) ? "IComparer" : definition == typeof(IEqualityComparer<>) ? "IEqualityComparer" : null;
                return comparer is not null && ImplementsOver(user.Type, comparer, element)
                    ? Activator.CreateInstance(typeof(UserComparer<>).MakeGenericType(element), this, user)
                    : null;
            default:
                return argument is UserObject ? null : argument;
        }
    }

    private IEnumerable<object?> Walked(UserObject user, IOperation at, Frame frame)
    {
        foreach (var item in Duck(user, at, frame))
        {
            yield return item is Unknown ? throw new UnknownSignal(true) : item;
        }
    }

    private bool ImplementsOver(INamedTypeSymbol type, string name, Type element)
    {
        foreach (var implemented in type.AllInterfaces)
        {
            if (implemented is { TypeArguments: [var over] } && implemented.Name == name && (types.Find(over) is { } found && found.IsAssignableFrom(element) || (name == "IEnumerable" && types.Find(over) == element)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Calls the member of a comparer of the source that implements the library's interface.</summary>
    internal object? CallComparer(UserObject comparer, string member, object?[] arguments)
    {
        foreach (var implemented in comparer.Type.AllInterfaces)
        {
            if (implemented.Name is "IComparer" or "IEqualityComparer" && implemented.GetMembers(member) is [IMethodSymbol asked, ..] && comparer.Type.FindImplementationForInterfaceMember(asked) is IMethodSymbol method)
            {
                return FromLibrary((at, frame) => Call(Override(method, comparer), comparer, arguments, at, frame));
            }
        }

        throw new UnknownSignal(true);
    }
}

/// <summary>A comparer that the evaluated source declares, as library code sees it.</summary>
internal sealed class UserComparer<T>(Interpreter interpreter, UserObject comparer) : IComparer<T>, IEqualityComparer<T>
{
    public int Compare(T? x, T? y) => (int)interpreter.CallComparer(comparer, "Compare", [x, y])!;

    public bool Equals(T? x, T? y) => (bool)interpreter.CallComparer(comparer, "Equals", [x, y])!;

    public int GetHashCode(T obj) => (int)interpreter.CallComparer(comparer, "GetHashCode", [obj])!;
}
