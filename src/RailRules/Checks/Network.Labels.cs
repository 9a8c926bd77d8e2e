namespace RailRules;

/// <content>What people call things.</content>
public sealed partial class Network
{
    /// <summary>A rail's name.</summary>
    internal static string Label(Rail rail) => Named(rail, "rail");

    /// <summary>A source's name.</summary>
    internal static string Label(Source source) => Named(source, source switch
    {
        Supply => "supply",
        Battery => "battery",
        Converter => "converter",
        _ => "rail",
    });

    /// <summary>A part: part number, own name, declaring member unless it was made inside the rail, designator, or kind and position.</summary>
    /// <param name="part">The part.</param>
    /// <param name="rail">The rail on which it stands.</param>
    /// <param name="position">Its position in the path, from 0.</param>
    internal static string Label(Element part, Rail rail, int position) =>
        Text(part.PartNumber) ?? Text(part.Name) ?? Declared(part.Member, rail) ?? Text(part.Designator) ?? $"{Kind(part)} {position + 1}";

    /// <summary>A load: own name, declaring member unless it was made inside the rail, or "load 1".</summary>
    internal static string Label(Load load, Rail rail, int position) => Text(load.Name) ?? Declared(load.Member, rail) ?? $"load {position + 1}";

    /// <summary>A clamp, as a part.</summary>
    internal static string Label(TransientSuppressor clamp, Rail rail, int position) =>
        Text(clamp.PartNumber) ?? Text(clamp.Name) ?? Declared(clamp.Member, rail) ?? Text(clamp.Designator) ?? $"clamp {position + 1}";

    /// <summary>A capacitor, as a part.</summary>
    internal static string Label(Capacitor capacitor, Rail rail, int position) =>
        Text(capacitor.PartNumber) ?? Text(capacitor.Name) ?? Declared(capacitor.Member, rail) ?? Text(capacitor.Designator) ?? $"capacitor {position + 1}";

    /// <summary>What kind of part it is, in lower case.</summary>
    internal static string Kind(Element part) => part switch
    {
        Fuse => "fuse",
        CircuitBreaker => "circuit breaker",
        ResettableFuse => "resettable fuse",
        ElectronicFuse => "electronic fuse",
        BlockingDiode => "blocking diode",
        Busbar => "busbar",
        Connector => "connector",
        FuseHolder => "fuse holder",
        Inductor => "inductor",
        InrushLimiter => "inrush limiter",
        ParallelGroup => "parallel group",
        SenseResistor => "sense resistor",
        Switch => "switch",
        Trace => "trace",
        Wire => "wire",
        _ => "part",
    };

    private static string Named(Source source, string kind) => Text(source.Name) ?? Text(source.Member) ?? $"unnamed {kind}";

    private static string? Text(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;

    private static string? Declared(string? member, Rail rail) => member == rail.Member || member == ".ctor" ? null : Text(member);
}
