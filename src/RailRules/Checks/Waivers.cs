using System.Collections.Immutable;
using System.Globalization;
using RailRules.Rules;

namespace RailRules;

/// <summary>The waivers of a board at work: which checks they cover, and whether each is in order and still needed.</summary>
internal sealed class Waivers
{
    private const string DateForm = "yyyy-MM-dd";

    /// <summary>What these find spoils the checks that rest on it, so that there is nothing to approve.</summary>
    private static readonly HashSet<string> NeverWaived = ["RAIL0003", "RAIL0007", "RAIL0008"];

    private readonly Network network;
    private readonly CheckOptions options;
    private readonly List<Use> uses;

    internal Waivers(Network network, CheckOptions options)
    {
        this.network = network;
        this.options = options;
        uses = [.. options.Waivers.Select(waiver => new Use(waiver, FormFault(waiver)))];
    }

    /// <summary>Marks the checks that a waiver in force covers.</summary>
    internal ImmutableArray<Check> Mark(ImmutableArray<Check> checks)
    {
        if (uses.Count == 0)
        {
            return checks;
        }

        var result = checks.ToBuilder();
        for (var i = 0; i < result.Count; i++)
        {
            var check = result[i];
            foreach (var use in uses)
            {
                if (use.Fault is not null || use.Waiver.Rule != check.Rule || !Covers(use.Waiver, check))
                {
                    continue;
                }

                use.Covered.Add(check);
                if (check.Verdict is Verdict.Fails or Verdict.Undecided && result[i].Waiver is null && Lapse(use.Waiver) is null)
                {
                    result[i] = check with { Verdict = Verdict.Waived, WaivedVerdict = check.Verdict, Waiver = use.Waiver };
                }
            }
        }

        return result.ToImmutable();
    }

    /// <summary>Notes which of the checks are left, so that a check left out for another cause does not count as holding.</summary>
    internal void NoteSilenced(ImmutableArray<Check> left)
    {
        foreach (var use in uses)
        {
            use.AnySilenced = use.Covered.Any(covered => !left.Any(check =>
                ReferenceEquals(check, covered) || (check.Waiver is not null && check.Rule == covered.Rule && check.Subject == covered.Subject && ReferenceEquals(check.Rail, covered.Rail))));
        }
    }

    /// <summary>A check of each of the board's own waivers: RAIL0008, or RAIL0012 where it cannot work.</summary>
    internal IEnumerable<Check> Judge(RuleDescription description)
    {
        foreach (var use in uses)
        {
            if (!use.Waiver.IsOfAnotherBoard)
            {
                yield return Judge(description, use);
            }
        }
    }

    private Check Judge(RuleDescription description, Use use)
    {
        var waiver = use.Waiver;
        var name = Name(waiver);
        Check Say(Verdict verdict, string text, string? rule = null) => new(rule ?? description.Id, name, verdict, null, text) { Part = waiver, Places = [new DatumPlace(waiver)], Basis = description.Basis };

        if (use.Fault is { } fault)
        {
            return Say(Verdict.Fails, $"{name} cannot work: {fault}", "RAIL0012");
        }

        if (Lapse(waiver) is { } lapse)
        {
            return Say(Verdict.Fails, $"{name} {lapse}; it waives nothing");
        }

        if (!use.Covered.Any(check => check.Verdict is Verdict.Fails or Verdict.Undecided))
        {
            // What could not be worked out, or was left out for another cause, may still need it.
            if (options.IsIncomplete || use.AnySilenced || Network.Items(options.DesignRules).Any(rule => rule.IsNotRun && rule.Id == waiver.Rule))
            {
                return Say(Verdict.Undecided, $"whether {name} is needed cannot be judged: not all of what it covers could be checked");
            }

            var margin = use.Covered.Select(check => check.Margin).Where(value => value is not null).Min();
            return Say(Verdict.Fails, $"{name} is no longer needed: {(use.Covered.Count == 0 ? "the rule makes no check there" : margin is { } least && !double.IsInfinity(least) ? "margin " + Figures.Text(least, "×") : "it holds")}");
        }

        if (Date(waiver.Until) is not null && options.Today is null)
        {
            return Say(Verdict.Undecided, $"{name} holds until {waiver.Until}; whether that is past is not judged, since the build gives no date (RailRulesToday)");
        }

        return Say(Verdict.Holds, $"{name} is needed: {waiver.Text}");
    }

    private static string Name(Waiver waiver)
    {
        var what = waiver.On ?? (waiver.Scope.Length > 0 ? waiver.Scope : null);
        return $"waiver of {waiver.Rule}" + (what is null ? " on the whole board" : $" on '{what}'");
    }

    /// <summary>Why a waiver is not in force; null where it is, as far as can be judged.</summary>
    private string? Lapse(Waiver waiver) =>
        string.IsNullOrWhiteSpace(waiver.Reason) ? "has no reason"
        : string.IsNullOrWhiteSpace(waiver.ApprovedBy) ? "has no approver"
        : Date(waiver.Until) is { } until && options.Today is { } today && today.Date > until ? $"ended {waiver.Until}"
        : null;

    /// <summary>Why a waiver cannot work as it is written; null where it can.</summary>
    private string? FormFault(Waiver waiver)
    {
        if (string.IsNullOrWhiteSpace(waiver.Rule))
        {
            return "it names no rule";
        }

        if (NeverWaived.Contains(waiver.Rule))
        {
            return $"{waiver.Rule} cannot be waived; what it finds has to be put right";
        }

        if (!Registry.All.Any(rule => rule.Description.Id == waiver.Rule) && !Network.Items(options.DesignRules).Any(rule => rule.Id == waiver.Rule))
        {
            return waiver.Rule.StartsWith("RAIL00", StringComparison.Ordinal)
                ? $"{waiver.Rule} is about the code, not about a rail, and cannot be waived"
                : $"there is no rule {waiver.Rule}";
        }

        if (!string.IsNullOrWhiteSpace(waiver.Until) && Date(waiver.Until) is null)
        {
            return $"Until is '{waiver.Until}', which is no date; write year-month-day, e.g. 2027-06-30";
        }

        return waiver.On is { } on && !options.IsIncomplete && !IsName(waiver, on)
            ? $"the board has no member, rail, designator or part '{on}'"
            : null;
    }

    private bool Covers(Waiver waiver, Check check)
    {
        if (waiver.Scope.Length > 0 && !options.Members.Any(member => IsWithin(member.Name, waiver.Scope) && Holds(member, check)))
        {
            return false;
        }

        return waiver.On is not { } on
            || options.Members.Any(member => IsCalled(waiver, member, on) && Holds(member, check))
            || (check.Rail is { } rail && Network.Label(rail) == on)
            || (check.Part is { } part && NamesOf(part).Contains(on));
    }

    private bool IsName(Waiver waiver, string on) =>
        options.Members.Any(member => IsCalled(waiver, member, on))
        || network.Rails.Any(rail => Network.Label(rail) == on || PartsOf(rail).Any(part => NamesOf(part).Contains(on)))
        || network.Sources.Any(source => NamesOf(source).Contains(on));

    /// <summary>Whether a member has that name, alone or with the classes around it.</summary>
    private static bool IsCalled(Waiver waiver, BoardMember member, string on) =>
        IsWithin(member.Name, waiver.Scope) && (member.Name == on || member.Name.EndsWith("." + on, StringComparison.Ordinal));

    private static bool IsWithin(string name, string scope) => scope.Length == 0 || name == scope || name.StartsWith(scope + ".", StringComparison.Ordinal);

    /// <summary>Whether a check is about something that a member holds; a part keeps its member's name where a place gives it a designator.</summary>
    private static bool Holds(BoardMember member, Check check)
    {
        foreach (var held in member.Objects)
        {
            if (ReferenceEquals(held, check.Rail) || ReferenceEquals(held, check.Part))
            {
                return true;
            }
        }

        var name = member.Name.Substring(member.Name.LastIndexOf('.') + 1);
        return check.Part is Element { Member: { } made } && made == name && member.Objects.Any(held => held is Element);
    }

    private IEnumerable<object> PartsOf(Rail rail) =>
        new IEnumerable<object?>[] { network.Parts(rail).Select(place => place.Part), Network.Items(rail.Clamps), Network.Items(rail.Capacitors), Network.Items(rail.Loads) }
            .SelectMany(parts => parts).Where(part => part is not null)!;

    private static IEnumerable<string?> NamesOf(object part) => part switch
    {
        Element element => [element.Designator, element.PartNumber, element.Name, element.Member],
        TransientSuppressor clamp => [clamp.Designator, clamp.PartNumber, clamp.Name, clamp.Member],
        Capacitor capacitor => [capacitor.Designator, capacitor.PartNumber, capacitor.Name, capacitor.Member],
        Load load => [load.Name, load.Member],
        Source source => [source.Name, source.Member],
        _ => [],
    };

    private static DateTime? Date(string? text) =>
        DateTime.TryParseExact(text, DateForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;

    private sealed class Use(Waiver waiver, string? fault)
    {
        internal Waiver Waiver { get; } = waiver;

        internal string? Fault { get; } = fault;

        internal List<Check> Covered { get; } = [];

        internal bool AnySilenced { get; set; }
    }
}
