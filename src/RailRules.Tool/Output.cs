using System.Text;
using RailRules.Review;

namespace RailRules.Tool;

/// <summary>Files of reviews: each appears whole or not at all.</summary>
internal static class Output
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>A file name for each board: its class's name, longer where two have the same.</summary>
    public static IReadOnlyList<string> Names(IReadOnlyList<BoardInput> boards)
    {
        var names = boards.Select(board => Clean(board.Name)).ToArray();
        Lengthen(board => Clean(board.FullName));
        Lengthen(board => Clean(board.Project + "." + board.FullName));
        for (var i = 0; i < names.Length; i++)
        {
            // Two projects of one name with one class: told apart by their order.
            var before = names.Take(i).Count(name => string.Equals(name, names[i], StringComparison.OrdinalIgnoreCase));
            names[i] = before == 0 ? names[i] : $"{names[i]}-{before + 1}";
        }

        return names;

        void Lengthen(Func<BoardInput, string> name)
        {
            foreach (var group in boards.Select((board, index) => (board, index)).GroupBy(one => names[one.index], StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1).ToList())
            {
                foreach (var (board, index) in group)
                {
                    names[index] = name(board);
                }
            }
        }
    }

    /// <summary>Letters, digits, points and hyphens; at most 100 of them.</summary>
    private static string Clean(string name)
    {
        var clean = string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-' or '.' || (c > 127 && char.IsLetterOrDigit(c)) ? c : '_'));
        return clean.Length <= 100 ? clean : clean[..80] + "-" + Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(name)))[..16];
    }

    /// <summary>Makes the folder and proves that it can be written to.</summary>
    public static void Prepare(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var probe = Path.Combine(folder, ".railrules-" + Guid.NewGuid().ToString("N"));
            File.WriteAllBytes(probe, []);
            File.Delete(probe);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new CannotRunException($"The reviews cannot be written to '{folder}'", exception.Message, "name a folder that can be written to with --output");
        }
    }

    public static async Task WriteAsync(string file, string text, CancellationToken cancellation)
    {
        var part = file + "." + Guid.NewGuid().ToString("N")[..8] + ".part";
        try
        {
            await File.WriteAllTextAsync(part, text, Utf8, cancellation);
            cancellation.ThrowIfCancellationRequested();
            File.Move(part, file, overwrite: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new CannotRunException($"'{file}' cannot be written", exception.Message, "close what holds it, or name another folder with --output");
        }
        finally
        {
            File.Delete(part);
        }
    }
}
