using System.Xml.Linq;
using RailRules.Rules;

namespace RailRules.Tests.Checks;

/// <summary>A trimmed program keeps every rule: the linker's descriptor, in the form that the .NET SDK documents, names the namespace in which the registry finds them.</summary>
public sealed class TrimmingTests
{
    [Fact]
    public void The_descriptor_keeps_the_namespace_of_every_rule()
    {
        using var stream = typeof(Rule).Assembly.GetManifestResourceStream("ILLink.Descriptors.xml");
        var assembly = XDocument.Load(stream!).Root!.Element("assembly")!;
        Assert.Equal(typeof(Rule).Assembly.GetName().Name, assembly.Attribute("fullname")!.Value);
        var kept = assembly.Elements("namespace").Where(space => space.Attribute("preserve")?.Value == "all").Select(space => space.Attribute("fullname")!.Value).ToList();
        Assert.All(Registry.All, rule => Assert.Contains(rule.GetType().Namespace, kept));
    }
}
