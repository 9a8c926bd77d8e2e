namespace RailRules;

/// <summary>Marks a class whose static members describe the rails of a board; the analyzer evaluates and checks it.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class BoardAttribute : Attribute;
