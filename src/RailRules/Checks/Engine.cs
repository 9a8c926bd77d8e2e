using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules;

/// <summary>Applies every rule to a board's rails. Analyzer, review, unit tests and fixes all come through here.</summary>
public static class Engine
{
    /// <summary>Every check of the rails and of what feeds them, with its working, in order of rail and rule.</summary>
    /// <param name="rails">The board's rails.</param>
    public static ImmutableArray<Check> Check(IEnumerable<Rail> rails) => Check(rails, new CheckOptions());

    /// <summary>Every check of the rails and of what feeds them.</summary>
    /// <param name="rails">The board's rails.</param>
    /// <param name="isUnknown">Whether a datum (owner, property) was written but could not be worked out; what depends on it is undecided.</param>
    public static ImmutableArray<Check> Check(IEnumerable<Rail> rails, Func<object, string, bool>? isUnknown) =>
        Check(rails, new CheckOptions { IsUnknown = isUnknown });

    /// <summary>Every check of the rails and of what feeds them, those that the board's waivers cover marked as waived.</summary>
    /// <param name="rails">The board's rails.</param>
    /// <param name="options">What else is to be known of the board.</param>
    public static ImmutableArray<Check> Check(IEnumerable<Rail> rails, CheckOptions options) =>
        Check(new Network(rails, options.IsUnknown), Registry.All, options);

    /// <summary>Every check of a board, by this library's rules and by the team's own. What could not be looked into is an undecided check of its own.</summary>
    /// <param name="board">The board: the generated <c>Model</c> of its class.</param>
    /// <param name="today">The day on which waivers are judged; null: whether one is past its date is not judged.</param>
    public static ImmutableArray<Check> Check(BoardModel board, DateTime? today)
    {
        var checks = Check(board.Rails, new CheckOptions
        {
            Members = board.Members,
            Waivers = board.Waivers,
            DesignRules = board.Rules,
            Board = board,
            Today = today,
            IsIncomplete = board.NotReached.Length > 0,
        });
        return
        [
            .. checks,
            .. board.NotReached.Select(name => new Check(
                "RAIL0012", $"board '{board.Name}': {name}", Verdict.Undecided, null,
                $"'{name}' may hold rails that Model does not reach; make it accessible, and give it the type of what it holds")),
        ];
    }

    /// <summary>Applies the rules given; one cause gives one finding.</summary>
    internal static ImmutableArray<Check> Check(Network network, ImmutableArray<Rule> rules, CheckOptions? options = null)
    {
        options ??= new CheckOptions();
        var waivers = network.Waivers = new Waivers(network, options);
        var checks = Silencing.Apply(network, waivers.Mark([.. rules.SelectMany(rule => Apply(rule, network)), .. Team(network, options)]));
        waivers.NoteSilenced(checks);
        foreach (var rule in rules.OrderBy(rule => rule.Stage))
        {
            checks = checks.AddRange(waivers.Mark([.. rule.Summarize(network, checks)]));
        }

        var order = new Dictionary<Rail, int>();
        foreach (var rail in network.Rails)
        {
            order.Add(rail, order.Count);
        }

        return
        [
            .. checks
                .OrderBy(check => check.Rail is { } rail && order.TryGetValue(rail, out var index) ? index : int.MaxValue)
                .ThenBy(check => check.Rule, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<Check> Team(Network network, CheckOptions options)
    {
        if (options.DesignRules.IsDefaultOrEmpty)
        {
            return [];
        }

        var board = options.Board ?? OfRails(network);
        return options.DesignRules.SelectMany(rule => rule.Apply(network, board));
    }

    private static BoardModel OfRails(Network network)
    {
        var builder = new BoardModelBuilder("board");
        foreach (var rail in network.Rails)
        {
            builder.Member(Network.Label(rail)).Add("", rail);
        }

        return builder.Build();
    }

    /// <summary>
    /// A number so large that it cannot be converted between units makes UnitsNet throw. Which datum it is, RAIL0003 says; here nothing may be passed because of it.
    /// </summary>
    internal static IEnumerable<Check> Apply(Rule rule, Network network)
    {
        try
        {
            return [.. rule.Apply(network)];
        }
        catch (Exception exception) when (exception is ArgumentException or OverflowException)
        {
            return network.JudgedRails.Select(rail => Subject.Of(rule.Description, rail, new DatumPlace(rail)).ToUndecided([]));
        }
    }
}
