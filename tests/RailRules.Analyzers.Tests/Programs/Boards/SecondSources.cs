using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.SecondSources;

/// <summary>Alternates made by a query over a stock list.</summary>
public static class P
{
    private static readonly (string Number, double Amperes, double Volts)[] Stock = [("A16", 16, 80), ("B16", 16, 60), ("C16", 16, 100), ("A20", 20, 80)];
    public static readonly Fuse First = WithAlternates("A16");
    public static readonly int Count = First.Alternates.Length;
    public static readonly ImmutableArray<string?> Numbers = [.. First.Alternates.Select(part => part.PartNumber)];

    private static Fuse WithAlternates(string number)
    {
        var (_, amperes, volts) = Stock.Single(row => row.Number == number);
        return Make(number, amperes, volts) with
        {
            Alternates = [.. from row in Stock where row.Amperes == amperes && row.Volts >= volts && row.Number != number orderby row.Volts select Make(row.Number, row.Amperes, row.Volts)],
        };
    }

    private static Fuse Make(string number, double amperes, double volts) => new() { PartNumber = number, RatedCurrent = amperes.Amperes(), DcVoltageRating = volts.Volts() };
}
