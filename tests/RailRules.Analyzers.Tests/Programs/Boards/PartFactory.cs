using System.Collections.Immutable;
using System.Globalization;
using RailRules;
using UnitsNet;

namespace Programs.Boards.PartFactory;

/// <summary>A method that makes parts of a family.</summary>
public static class P
{
    public static readonly Fuse Small = Blade(5, "tan");
    public static readonly Fuse Medium = Blade(15, "blue", cold: 5.2);
    public static readonly Fuse Large = Blade(30, "green") with { Joint = Joint.Clip };
    public static readonly ImmutableArray<Fuse> Family = [Small, Medium, Large];
    public static readonly string Names = string.Join(", ", Family.Select(fuse => fuse.Name));

    private static Fuse Blade(double amperes, string colour, double? cold = null) => new()
    {
        Name = $"{colour} blade",
        PartNumber = "Fennel" + amperes.ToString(CultureInfo.InvariantCulture),
        RatedCurrent = amperes.Amperes(),
        DcVoltageRating = 32.Volts(),
        ColdResistance = cold is { } milliohms ? milliohms.Milliohms() : (Band<ElectricResistance>?)null,
        Characteristic = Characteristic.Iso8820Blade,
        InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts(), TimeConstant = 2.Milliseconds() }],
    };
}
