using RailRules.Physics;

namespace RailRules.Tests;

public partial class CheckValues
{
    /// <summary>How each row on drops and heat is computed, by RAIL0502 where it compares it.</summary>
    private static readonly Dictionary<string, Func<Row, double>> Budgeted = new(StringComparer.Ordinal)
    {
        ["CN-01"] = row => Cost(new Connector { ContactResistance = row["R_mohm"].Milliohms() }, row["I_A"], new() { Dissipation = 1.Watts() }),
        ["CN-02"] = row => Enumerable.Range(1, 100).First(pins => Bears(row["I_A"], row["Ipin_A"], row["derate"], pins)),
        ["WR-27"] = row => Cost(new Wire { Resistance = (row["r_ohm_ft"] * row["L_ft"]).Ohms(), TemperatureLimit = 20.Celsius() }, row["I_A"], new() { Drop = 1.Volts() }),
        ["WR-28"] = row => Cost(new Wire { Resistance = (row["r_ohm_ft"] * row["L_ft"]).Ohms(), TemperatureLimit = 20.Celsius() }, row["I_A"], new() { Drop = 1.Volts() }),
        ["WR-29"] = row => row["L1_ft"] / Conductors.TemperatureFactor(Conductors.CopperCoefficient, row["T2_C"]),
    };

    public static TheoryData<string> BudgetedRows() => [.. Budgeted.Keys];

    [Theory]
    [MemberData(nameof(BudgetedRows))]
    public void Budget(string id) => Check(id, Budgeted[id](Rows[id]));

    /// <summary>What a path costs by the demand of RAIL0502, its return at no resistance.</summary>
    private static double Cost(Element element, double amperes, Budgets budgets)
    {
        var rail = new Rail("Row") { From = new Supply("Source") { Voltage = 28.Volts() }, Path = [element], Return = Return.OfResistance(0.Ohms()), Loads = [new() { Current = amperes.Amperes() }], Budgets = budgets };
        return Engine.Check([rail]).Single(check => check.Rule == "RAIL0502").Demand!.Value.Value;
    }

    /// <summary>Whether RAIL0204 holds for contacts of one resistance behind a device that lets a current flow.</summary>
    private static bool Bears(double amperes, double rating, double share, int contacts)
    {
        var connector = new Connector { Contacts = contacts, ContactRating = rating.Amperes(), ContactResistance = 1.Milliohms() };
        var rail = new Rail("Row")
        {
            From = new Supply("Source") { Voltage = 24.Volts() },
            Path = [new CircuitBreaker { RatedCurrent = amperes.Amperes(), ConventionalTripMultiple = 1 }, connector],
            Policy = new() { Name = "row", ConnectorContinuous = share },
        };
        return Engine.Check([rail]).Single(check => check.Rule == "RAIL0204" && ReferenceEquals(check.Places[1].Owner, connector)).Verdict == Verdict.Holds;
    }
}
