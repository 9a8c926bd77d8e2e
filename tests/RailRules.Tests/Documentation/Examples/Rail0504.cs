namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0504
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()) };

    static readonly Wire DikeCable = new() { Resistance = 0.4.Ohms(), TemperatureLimit = 70.Celsius() };

    static readonly Wire ThickCable = new() { Resistance = 0.1.Ohms(), TemperatureLimit = 70.Celsius() };

    static readonly Load Pump = new() { Name = "Pump", Power = 600.Watts(), MinVoltage = 30.Volts() };

    static readonly Rail Far = new() { From = Plant, Path = [DikeCable], Return = Return.Mirrored, Loads = [Pump] };

    static readonly Rail Better = new() { From = Plant, Path = [ThickCable], Return = Return.Mirrored, Loads = [Pump] };
}
