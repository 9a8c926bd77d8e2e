using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Evaluation;

/// <summary>Evaluates the static members of one compilation. Not thread-safe; <see cref="EvaluationSession"/> locks.</summary>
internal sealed partial class Interpreter
{
    private const string InternalReason = "internal: ";

    private readonly Compilation compilation;
    private readonly EvaluationLimits limits;
    private readonly Bodies bodies;
    private readonly TypeMap types;
    private readonly LibraryMembers library;
    private readonly Effects effects;
    private MemberRun run = null!;
    private CancellationToken cancellation;

    public Interpreter(Compilation compilation, EvaluationLimits limits)
    {
        this.compilation = compilation;
        this.limits = limits;
        bodies = new Bodies(compilation);
        types = new TypeMap(compilation);
        library = new LibraryMembers(types);
        effects = new Effects(bodies, types, library);
    }

    public Provenance Provenance { get; } = new();

    public CancellationToken Cancellation
    {
        get => cancellation;
        set => bodies.Cancellation = cancellation = value;
    }

    /// <summary>Adds a problem at the operation; the value there is unknown. Where the compiler reports an error, it has the word.</summary>
    private Unknown Refuse(IOperation at, Frame frame, string reason, string remedy, ProblemKind kind = ProblemKind.NotComputable)
    {
        run.HasCause = true;
        if (kind == ProblemKind.NotComputable && bodies.IsInError(at.Syntax))
        {
            return Unknown.Value;
        }

        run.Add(new Problem(kind, new Origin(at.Syntax, frame.Activation.Site, run.Member), reason, remedy));
        return Unknown.Value;
    }

    /// <summary>Unknown because the code is malformed, which the compiler reports.</summary>
    private Unknown Silent()
    {
        run.HasCause = true;
        return Unknown.Value;
    }

    /// <summary>One step of the budget.</summary>
    private void Step(IOperation at, Frame frame)
    {
        if ((++run.Steps & 1023) == 0)
        {
            cancellation.ThrowIfCancellationRequested();
        }

        if (run.Steps + run.ReadSteps > limits.Steps)
        {
            OverSteps(at, frame);
        }
    }

    /// <summary>Several steps at once.</summary>
    private void Charge(long steps, IOperation at, Frame frame)
    {
        run.Steps += steps;
        if (run.Steps + run.ReadSteps > limits.Steps)
        {
            OverSteps(at, frame);
        }
    }

    private BudgetSignal OverBudget(IOperation at, Frame frame, string reason, string remedy)
    {
        Refuse(at, frame, reason, remedy, ProblemKind.Budget);
        return new BudgetSignal();
    }

    private void OverSteps(IOperation at, Frame frame)
    {
        // What is read along two ways counts twice in the quick bound; the exact sum decides.
        if (run.Steps + ExactReadSteps(run) > limits.Steps)
        {
            throw OverBudget(at, frame, $"evaluation takes more than {Thousands(limits.Steps)} steps", "write the value itself, or do less work in initialisers");
        }
    }

    private static string Thousands(long number) => number.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture).Replace(",", " ");
}
