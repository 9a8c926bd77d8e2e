using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RailRules.Package.Tests;

/// <summary>A client of a C# language server over its standard input and output, as an editor is one.</summary>
internal sealed class LanguageServer : IAsyncDisposable
{
    private readonly Process process;
    private readonly Stream input;
    private readonly Stream output;
    private readonly Task reading;
    private readonly ConcurrentDictionary<int, TaskCompletionSource<JsonNode?>> waiting = new();
    private readonly SemaphoreSlim writing = new(1);
    private readonly StringBuilder log = new();
    private int lastId;

    private LanguageServer(ProcessStartInfo start)
    {
        process = Process.Start(start)!;
        input = process.StandardInput.BaseStream;
        output = process.StandardOutput.BaseStream;
        process.ErrorDataReceived += (_, line) => Log(line.Data);
        process.BeginErrorReadLine();
        reading = Task.Run(ReadAsync);
    }

    /// <summary>What the server said about itself, for failures.</summary>
    public string Messages
    {
        get
        {
            lock (log)
            {
                return log.ToString();
            }
        }
    }

    /// <summary>Starts the server of the repository's tool manifest on the projects of a folder.</summary>
    public static async Task<LanguageServer> StartAsync(string folder)
    {
        var (exitCode, text) = Dotnet.Run(Repository.Root, "tool", "restore");
        Assert.True(exitCode == 0, text);
        var server = new LanguageServer(Dotnet.Prepare(Repository.Root, "tool", "run", "csharp-ls"));
        await server.RequestAsync("initialize", new JsonObject
        {
            ["processId"] = Environment.ProcessId,
            ["rootUri"] = new Uri(folder).AbsoluteUri,
            ["workspaceFolders"] = new JsonArray(new JsonObject { ["uri"] = new Uri(folder).AbsoluteUri, ["name"] = "consumer" }),
            ["capabilities"] = new JsonObject
            {
                ["workspace"] = new JsonObject { ["configuration"] = true },
                ["textDocument"] = new JsonObject { ["diagnostic"] = new JsonObject(), ["synchronization"] = new JsonObject() },
            },
        });
        await server.NotifyAsync("initialized", new JsonObject());
        return server;
    }

    public async Task<JsonNode?> RequestAsync(string method, JsonNode parameters)
    {
        var id = Interlocked.Increment(ref lastId);
        var answer = new TaskCompletionSource<JsonNode?>(TaskCreationOptions.RunContinuationsAsynchronously);
        waiting[id] = answer;
        await SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
        return await answer.Task.WaitAsync(TimeSpan.FromMinutes(3));
    }

    public Task NotifyAsync(string method, JsonNode parameters) =>
        SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
        }

        await process.WaitForExitAsync();
        await reading;
        process.Dispose();
        writing.Dispose();
    }

    private async Task SendAsync(JsonObject message)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(message);
        await writing.WaitAsync();
        try
        {
            await input.WriteAsync(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n\r\n")));
            await input.WriteAsync(body);
            await input.FlushAsync();
        }
        finally
        {
            writing.Release();
        }
    }

    private async Task ReadAsync()
    {
        try
        {
            while (await ReadLengthAsync() is { } length)
            {
                var body = new byte[length];
                await output.ReadExactlyAsync(body);
                await HandleAsync(JsonNode.Parse(body)!.AsObject());
            }
        }
        catch (Exception exception) when (exception is IOException or ObjectDisposedException)
        {
            Log("the connection ended: " + exception.Message);
        }

        foreach (var answer in waiting.Values)
        {
            answer.TrySetException(new IOException("The language server ended. " + Messages));
        }
    }

    private async Task<int?> ReadLengthAsync()
    {
        int? length = null;
        var line = new List<byte>();
        var single = new byte[1];
        while (await output.ReadAsync(single) == 1)
        {
            if (single[0] != '\n')
            {
                line.Add(single[0]);
                continue;
            }

            var header = Encoding.ASCII.GetString([.. line]).Trim();
            line.Clear();
            if (header.Length == 0)
            {
                return length;
            }

            if (header.StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase))
            {
                length = int.Parse(header["Content-Length:".Length..], CultureInfo.InvariantCulture);
            }
        }

        return null;
    }

    private async Task HandleAsync(JsonObject message)
    {
        var method = (string?)message["method"];
        if (method is null)
        {
            if (waiting.TryRemove((int)message["id"]!, out var answer))
            {
                if (message["error"] is { } error)
                {
                    answer.SetException(new InvalidOperationException(error.ToJsonString()));
                }
                else
                {
                    answer.SetResult(message["result"]);
                }
            }
        }
        else if (message["id"] is { } id)
        {
            // Analyzers are off unless the client's configuration turns them on.
            JsonNode? result = method == "workspace/configuration"
                ? new JsonArray([.. message["params"]!["items"]!.AsArray().Select(item => (string?)item!["section"] == "csharp" ? (JsonNode)new JsonObject { ["analyzersEnabled"] = true } : null)])
                : null;
            await SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id.DeepClone(), ["result"] = result });
        }
        else
        {
            Log(method + " " + message["params"]?.ToJsonString());
        }
    }

    private void Log(string? line)
    {
        lock (log)
        {
            log.AppendLine(line);
        }
    }
}
