using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RailRules.Benchmarks;

/// <summary>
/// A board of so many rails, each written out: a supply, a fuse with a datasheet's worth of data, two conductors, two loads; about forty properties.
/// Everything holds, so that nothing is found. All data invented.
/// </summary>
internal static class GeneratedBoard
{
    public const string ClassName = "GeneratedShelf";

    public static string Source(int rails)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $$"""
            using RailRules;

            namespace Generated;

            [Board]
            public static class {{ClassName}}
            {

            """);
        for (var rail = 1; rail <= rails; rail++)
        {
            text.Append(CultureInfo.InvariantCulture, $$"""
                public static readonly Rail R{{rail}} = new()
                {
                    From = new Supply { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts(), SourceResistance = Band.Of(5.Milliohms(), 9.Milliohms()), SourceInductance = 5.Microhenries(), ContinuousCurrent = 100.Amperes() },
                    Surroundings = new() { Ambient = Band.Of(0.Celsius(), 25.Celsius(), 40.Celsius()), Altitude = 500.Meters() },
                    Path =
                    [
                        new Fuse { PartNumber = "Reed25", RatedCurrent = 25.Amperes(), DcVoltageRating = 80.Volts(), InterruptingRatings = [new() { Current = 5.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }], MeltingIntegral = 320.AmpereSquaredSeconds(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius(), Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.86), new(85.Celsius(), 0.71)], ColdResistance = Band.Of(2.1.Milliohms(), 3.1.Milliohms()), OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()) }.As("F{{rail}}"),
                        new Trace { Resistance = 1.5.Milliohms() },
                        new Connector { ContactResistance = Band.Of(0.5.Milliohms(), 2.Milliohms()) },
                    ],
                    Return = Return.Mirrored,
                    Loads =
                    [
                        new() { Power = {{200 + (rail % 50)}}.Watts(), MinVoltage = 36.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 470.Microfarads() },
                        new() { Power = 150.Watts(), MinVoltage = 36.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 220.Microfarads() },
                    ],
                };

                """);
        }

        return text.Append("}\n").ToString();
    }

    public static CSharpCompilation Compile(string source) => CSharpCompilation.Create(
        "Generated",
        [CSharpSyntaxTree.ParseText(source, new CSharpParseOptions(LanguageVersion.CSharp14))],
        [
            .. Basic.Reference.Assemblies.Net100.References.All,
            MetadataReference.CreateFromFile(typeof(Rail).Assembly.Location),
            MetadataReference.CreateFromFile(typeof(UnitsNet.ElectricCurrent).Assembly.Location),
        ],
        new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable, optimizationLevel: OptimizationLevel.Release));

    /// <summary>The compiler's binding of every field's initialiser, which any analysis of values needs.</summary>
    public static int BindInitializers(Compilation compilation)
    {
        var bound = 0;
        foreach (var tree in compilation.SyntaxTrees)
        {
            var model = compilation.GetSemanticModel(tree);
            foreach (var initializer in tree.GetRoot().DescendantNodes(node => node is not EqualsValueClauseSyntax).OfType<EqualsValueClauseSyntax>())
            {
                bound += model.GetOperation(initializer) is null ? 0 : 1;
            }
        }

        return bound;
    }

    /// <summary>The rails of the board compiled, loaded and run.</summary>
    public static ImmutableArray<Rail> Run(Type board) => [.. board.GetFields().Select(field => (Rail)field.GetValue(null)!)];
}
