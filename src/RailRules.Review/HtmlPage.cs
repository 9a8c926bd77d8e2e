using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using RailRules.Review.Components;

namespace RailRules.Review;

/// <summary>The review as one HTML file that needs nothing else: no network, no script to be read.</summary>
public static class HtmlPage
{
    internal static string Style { get; } = Resource("page.css") + Resource("drawings.css");

    internal static string Script { get; } = Resource("page.js");

    /// <summary>The page's text, with line feeds alone.</summary>
    public static async Task<string> WriteAsync(BoardReview review)
    {
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var root = await renderer.RenderComponentAsync<Page>(ParameterView.FromDictionary(new Dictionary<string, object?> { ["Review"] = review }));
            return root.ToHtmlString();
        });
        return html.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
    }

    private static string Resource(string name)
    {
        using var stream = typeof(HtmlPage).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
