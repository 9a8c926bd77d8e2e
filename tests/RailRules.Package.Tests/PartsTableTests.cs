namespace RailRules.Package.Tests;

/// <summary>Parts tables in real projects: picked up by the package, generated, used by the program and by the analyzer.</summary>
[Collection(PackageCollection.Name)]
public sealed class PartsTableTests(PackageFeed feed)
{
    private const string Board = """
        using RailRules;

        namespace Site;

        /// <summary>Invented, not for use.</summary>
        [Board]
        public static class Shelf
        {
            private static readonly Wire Feeder = new() { Length = 1.Meters(), Section = 6.SquareMillimeters(), Resistance = 3.Milliohms(), Ampacity = 40.Amperes() };

            public static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts(), SourceResistance = 20.Milliohms() };

            public static readonly Rail Sled = new()
            {
                From = Plant,
                Path = [Parts.Fuses.Reed_20.As("F1"), Feeder],
                Return = Return.Mirrored,
                Loads = [new() { Power = 300.Watts() }],
            };
        }
        """;

    [Fact]
    public void A_table_gives_parts_to_program_and_board()
    {
        var consumer = new Consumer(feed, "Tables", "<OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><RootNamespace>Site</RootNamespace><NoWarn>$(NoWarn);RAIL0004</NoWarn>");
        consumer.Write("Shelf.cs", Board);
        consumer.Write("Program.cs", "using Site; System.Console.WriteLine($\"{Shelf.Sled.Path[0].PartNumber} {Parts.Fuses.Reed_20.DcVoltageRating!.Value.Volts} {Parts.Fuses.All.Length}\");");
        Directory.CreateDirectory(Path.Combine(consumer.Folder, "tables"));

        // 32 V on a rail that reaches 60 V, found through the table, where the rail uses the part.
        consumer.Write(Path.Combine("tables", "Fuses.parts.csv"), "\uFEFFFuse,RatedCurrent [A],DcVoltageRating [V]\r\nReed-20,20,32\r\nReed-25,25,80\r\n");
        var unsound = consumer.Build().Fails().Findings;
        Assert.Contains(unsound, finding => finding is { Id: "RAIL0101", File: "Shelf.cs", Line: 16, Severity: "error" });

        consumer.Write(Path.Combine("tables", "Fuses.parts.csv"), "Fuse,RatedCurrent [A],DcVoltageRating [V]\nReed-20,\"20,5\",80\nReed-25,25,80\n");
        var unread = consumer.Build("--no-restore").Fails().Findings;
        Assert.Contains(unread, finding => finding is { Id: "RAIL0006", File: "Fuses.parts.csv", Line: 2, Severity: "error" });
        Assert.Contains(unread, finding => finding is { Id: "RAIL0006", File: "Shelf.cs", Line: 16, Severity: "error" });

        consumer.Write(Path.Combine("tables", "Fuses.parts.csv"), "Fuse,RatedCurrent [A],DcVoltageRating [V]\nReed-20,20,80\nReed-25,25,80\n");
        var sound = consumer.Build("--no-restore").Findings;
        Assert.DoesNotContain(sound, finding => finding.Id is "RAIL0006" or "RAIL0101" or "RAIL0001");
    }

    [Fact]
    public void The_program_of_every_framework_has_the_parts()
    {
        var consumer = new Consumer(feed, "Table frameworks", "<TargetFrameworks>net10.0;netstandard2.0</TargetFrameworks><LangVersion>12</LangVersion><RootNamespace>Site</RootNamespace><TreatWarningsAsErrors>true</TreatWarningsAsErrors><GenerateDocumentationFile>true</GenerateDocumentationFile>");
        consumer.Write("Use.cs", "namespace Site;\n/// <summary>Uses parts.</summary>\npublic static class Use\n{\n    /// <summary>A fuse.</summary>\n    public static RailRules.Fuse Fuse => Parts.Fuses.Reed_20;\n}\n");
        consumer.Write("Fuses.parts.csv", "Fuse,RatedCurrent [A],Citation\nReed-20,20,\"invented, <not> for use\"\n");
        consumer.Build().SucceedsSilently();

        var program = new Consumer(feed, "Table program", "<OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework>", """<ProjectReference Include="../Table frameworks/Table frameworks.csproj" />""");
        program.Write("Program.cs", "System.Console.WriteLine(Site.Use.Fuse.RatedCurrent!.Value.Amperes + \" \" + Site.Parts.Fuses.Find(\"Reed-20\").Citation);");
        program.Build().Succeeds();
        var (exitCode, text) = Dotnet.Run(program.Folder, "run", "--no-build");
        Assert.True(exitCode == 0, text);
        Assert.Contains("20 invented, <not> for use", text, StringComparison.Ordinal);
    }
}
