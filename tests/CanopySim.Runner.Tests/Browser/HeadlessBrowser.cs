using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace CanopySim.Runner.Tests.Browser;

/// <summary>
/// Debian's Chromium without a window, told what to do by its DevTools protocol. One page; what it asks the network for
/// and what it complains about is kept.
/// </summary>
internal sealed partial class HeadlessBrowser : IDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(3);

    private readonly string _profile = Directory.CreateTempSubdirectory("canopysim-browser-").FullName;
    private readonly Process _process;
    private readonly ClientWebSocket _socket = new();
    private readonly CancellationTokenSource _timeout = new(Longest);
    private readonly Queue<string> _loaded = new();
    private string? _session;
    private int _lastId;

    public HeadlessBrowser()
    {
        var start = new ProcessStartInfo(
            Program ?? throw new InvalidOperationException("no chromium"))
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true
        };
        // Chromium will not run as root in its sandbox; the page is our own.
        foreach (var argument in (string[])["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update", "--disable-dev-shm-usage", "--remote-debugging-port=0",
                $"--user-data-dir={_profile}", "about:blank"])
            start.ArgumentList.Add(argument);
        _process = Process.Start(start)!;
        try
        {
            _socket.ConnectAsync(new Uri(Address()), _timeout.Token).GetAwaiter().GetResult();
            var target = Call("Target.createTarget", new { url = "about:blank" }).GetProperty("targetId").GetString();
            _session = Call("Target.attachToTarget", new { targetId = target, flatten = true }).GetProperty("sessionId")
                .GetString();
            foreach (var domain in (string[])["Page", "Runtime", "Log", "Network"]) Call($"{domain}.enable", new { });
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>Where the program is; null where it is not installed.</summary>
    public static string? Program { get; } =
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "chromium")).FirstOrDefault(File.Exists);

    /// <summary>Addresses that pages asked for, but those of data within them.</summary>
    public List<string> Requests { get; } = [];

    /// <summary>Errors on the console, in scripts and in loading.</summary>
    public List<string> Errors { get; } = [];

    /// <summary>Opens a file in a window of a size and waits until it and its pictures are there.</summary>
    public void Open(string file, int width, int height)
    {
        Call("Emulation.setDeviceMetricsOverride", new { width, height, deviceScaleFactor = 1, mobile = false });
        _loaded.Clear();
        Call("Page.navigate", new { url = new Uri(file).AbsoluteUri });
        while (_loaded.Count == 0) Receive();
    }

    /// <summary>Value of an expression in the page, as JSON.</summary>
    public JsonElement Evaluate(string expression) =>
        Call("Runtime.evaluate", new { expression, returnByValue = true, awaitPromise = true }).GetProperty("result")
            .GetProperty("value");

    /// <summary>The page as PDF on paper of a size [inches].</summary>
    public byte[] Pdf(double width, double height) => Convert.FromBase64String(
        Call("Page.printToPDF", new { paperWidth = width, paperHeight = height, printBackground = false })
            .GetProperty("data").GetString()!);

    public byte[] Screenshot() => Convert.FromBase64String(
        Call("Page.captureScreenshot", new { format = "png", captureBeyondViewport = true }).GetProperty("data")
            .GetString()!);

    public void Dispose()
    {
        _socket.Dispose();
        _timeout.Dispose();
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
        _process.Dispose();
        // Its helpers may still be writing.
        for (var attempt = 0; Directory.Exists(_profile); attempt++)
        {
            try
            {
                Directory.Delete(_profile, recursive: true);
            }
            catch (IOException) when (attempt < 20)
            {
                Thread.Sleep(100);
            }
        }
    }

    private string Address()
    {
        var listening = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        _process.ErrorDataReceived += (_, said) =>
        {
            if (said.Data is null) listening.TrySetException(
                new InvalidOperationException("chromium ended before it listened"));
            else if (Listening().Match(said.Data) is { Success: true } found) listening.TrySetResult(
                found.Groups[1].Value);
        };
        _process.BeginErrorReadLine();
        // Nobody reads what it says besides; it must not wait for that.
        _process.BeginOutputReadLine();
        return listening.Task.WaitAsync(_timeout.Token).GetAwaiter().GetResult();
    }

    private JsonElement Call(string method, object parameters)
    {
        var id = ++_lastId;
        var message = JsonSerializer.SerializeToUtf8Bytes(
            _session is null ? new { id, method, @params = parameters }
                : (object)new { id, method, @params = parameters, sessionId = _session });
        _socket.SendAsync(message, WebSocketMessageType.Text, true, _timeout.Token).GetAwaiter().GetResult();
        while (true)
        {
            var answer = Receive();
            if (!answer.TryGetProperty("id", out var of) || of.GetInt32() != id) continue;
            return answer.TryGetProperty("result", out var result) ? result
                : throw new InvalidOperationException($"{method}: {answer.GetRawText()}");
        }
    }

    private JsonElement Receive()
    {
        using var text = new MemoryStream();
        var buffer = new byte[1 << 16];
        ValueWebSocketReceiveResult part;
        do
        {
            part = _socket.ReceiveAsync(buffer.AsMemory(), _timeout.Token).AsTask().GetAwaiter().GetResult();
            text.Write(buffer, 0, part.Count);
        }
        while (!part.EndOfMessage);

        var message = JsonDocument.Parse(Encoding.UTF8.GetString(text.ToArray())).RootElement;
        if (message.TryGetProperty("method", out var method)) Note(method.GetString()!, message.GetProperty("params"));
        return message;
    }

    private void Note(string method, JsonElement what)
    {
        switch (method)
        {
            case "Page.loadEventFired":
                _loaded.Enqueue(method);
                break;
            case "Network.requestWillBeSent" when what.GetProperty("request").GetProperty("url").GetString() is { } url
                && !url.StartsWith("data:", StringComparison.Ordinal):
                Requests.Add(url);
                break;
            case "Runtime.exceptionThrown":
            case "Runtime.consoleAPICalled" when what.GetProperty("type").GetString() is "error" or "warning":
            case "Log.entryAdded" when what.GetProperty("entry").GetProperty("level")
                .GetString() is "error" or "warning":
                Errors.Add(what.GetRawText());
                break;
        }
    }

    [GeneratedRegex("DevTools listening on (ws://\\S+)")]
    private static partial Regex Listening();
}
