namespace RailRules.Analyzers.Evaluation;

/// <summary>The budget of evaluation, counted and never timed, so that the same source gives the same answer on every machine.</summary>
/// <param name="Steps">Operations that a member and all that it reads may take together.</param>
/// <param name="Depth">Calls inside calls within one member.</param>
/// <param name="Elements">Elements in one collection.</param>
/// <param name="Text">Characters in one string.</param>
internal sealed record EvaluationLimits(long Steps = 5_000_000, int Depth = 200, int Elements = 1_000_000, int Text = 1_000_000);
