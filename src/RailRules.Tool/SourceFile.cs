using System.Text;
using Microsoft.CodeAnalysis.Text;

namespace RailRules.Tool;

/// <summary>A source file with a change: its encoding and line ends stay, and nothing that came in between is lost.</summary>
internal static class SourceFile
{
    /// <summary>Replaces a file's text, if the file is still what was read.</summary>
    /// <param name="path">The file.</param>
    /// <param name="read">The text as it was read.</param>
    /// <param name="changed">The text to write.</param>
    /// <param name="before">Called before the file is read again.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    public static async Task ReplaceAsync(string path, SourceText read, SourceText changed, Action<string>? before, CancellationToken cancellation)
    {
        before?.Invoke(path);
        var part = path + "." + Guid.NewGuid().ToString("N")[..8] + ".part";
        try
        {
            var bytes = await File.ReadAllBytesAsync(path, cancellation);
            var encoding = read.Encoding ?? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
            var preamble = Encoding.UTF8.GetPreamble() is var mark && bytes.AsSpan().StartsWith(mark) ? mark : encoding.GetPreamble() is var own && bytes.AsSpan().StartsWith(own) ? own : [];
            if (!bytes.AsSpan().SequenceEqual((byte[])[.. preamble, .. encoding.GetBytes(read.ToString())]))
            {
                throw new CannotRunException($"'{path}' is not changed", "it has changed since it was read, or its encoding is not known", "run the command again");
            }

            await File.WriteAllBytesAsync(part, [.. preamble, .. encoding.GetBytes(changed.ToString())], cancellation);
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(part, File.GetUnixFileMode(path));
            }

            cancellation.ThrowIfCancellationRequested();
            File.Move(part, path, overwrite: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new CannotRunException($"'{path}' cannot be written", exception.Message, "close what holds it, or make it writable");
        }
        finally
        {
            File.Delete(part);
        }
    }
}
