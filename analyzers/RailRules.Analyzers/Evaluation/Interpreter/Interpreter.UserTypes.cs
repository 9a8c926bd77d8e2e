using System.Globalization;

namespace RailRules.Analyzers.Evaluation;

/// <content>Equality, order and text of objects of source types.</content>
internal sealed partial class Interpreter
{
    public bool UserEquals(UserObject left, object? right) => ReferenceEquals(left, right);

    public int UserHash(UserObject value) => value.Layout.Count;

    public int UserCompare(UserObject left, object? right) => throw new ArgumentException("At least one object must implement IComparable.");

    public string UserText(UserObject value, string? format = null) => value.Type.ToDisplayString() + format?.ToString(CultureInfo.InvariantCulture);
}
