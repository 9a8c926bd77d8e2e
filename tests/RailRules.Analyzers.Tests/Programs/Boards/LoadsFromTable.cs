using RailRules;

namespace Programs.Boards.LoadsFromTable;

/// <summary>Loads from an array of tuples.</summary>
public static class P
{
    private static readonly (string Name, double Watts, double MinVolts)[] Table =
    [
        ("cpu board", 240, 40),
        ("fan", 36, 20),
        ("storage", 75.5, 42),
    ];
    public static readonly Rail Main = new()
    {
        From = new Supply("Table supply") { Voltage = 54.Volts() },
        Loads = [.. Table.Select(row => new Load { Name = row.Name, Power = row.Watts.Watts(), MinVoltage = row.MinVolts.Volts() })],
    };
    public static readonly double Total = Table.Sum(row => row.Watts);
    public static readonly string Heaviest = Table.MaxBy(row => row.Watts).Name;
}
