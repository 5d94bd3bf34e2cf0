using System.Globalization;
using System.Net.Http.Json;
using System.Net.WebSockets;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace ClubCycle.TestKit.Live;

/// <summary>An open page without a browser: speaks to the server as the framework's script does, draws nothing, and presses buttons.</summary>
public sealed partial class LivePage : IAsyncDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(40);
    private static readonly byte[] Handshake = "{\"protocol\":\"blazorpack\",\"version\":1}\u001e"u8.ToArray();

    private readonly ClientWebSocket _socket = new();
    private readonly CancellationTokenSource _closing = new();
    private readonly SemaphoreSlim _sending = new(1);
    private readonly bool _acknowledges;
    private readonly List<(int Component, int Update, DrawnElement Element)> _drawn = [];
    private readonly TaskCompletionSource<string> _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private TaskCompletionSource _news = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private Task _listening = Task.CompletedTask;
    private long _events;
    private readonly HttpClient _browser;
    private readonly TaskCompletionSource<string> _secret = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _calls;

    private LivePage(HttpClient browser, bool acknowledges) => (_browser, _acknowledges) = (browser, acknowledges);

    /// <summary>Updates that came; each is acknowledged when it is said so.</summary>
    public int Updates { get; private set; }

    /// <summary>Ends when the server ends the page, with what it says.</summary>
    public Task<string> Ended => _ended.Task;

    /// <param name="browser">With the cookies of who is signed in, and the server's address.</param>
    /// <param name="acknowledges">False: never says that it has drawn an update.</param>
    public static async Task<LivePage> OpenAsync(HttpClient browser, string path, bool acknowledges = true) =>
        await OpenAsync(browser, path, await browser.GetStringAsync(path), acknowledges);

    /// <param name="html">What was fetched there.</param>
    public static async Task<LivePage> OpenAsync(HttpClient browser, string path, string html, bool acknowledges = true)
    {
        var page = new LivePage(browser, acknowledges);
        var address = new Uri(browser.BaseAddress!, path);
        var negotiated = await (await browser.PostAsync("/_blazor/negotiate?negotiateVersion=1", null)).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonObject>();
        var socket = new UriBuilder(new Uri(browser.BaseAddress!, $"/_blazor?id={negotiated!["connectionToken"]}")) { Scheme = "ws" };
        await page._socket.ConnectAsync(socket.Uri, browser, CancellationToken.None);
        await page._socket.SendAsync(Handshake, WebSocketMessageType.Text, true, CancellationToken.None);
        page._listening = Task.Run(page.ListenAsync);
        await page.CallAsync("1", "StartCircuit", $"{address.GetLeftPart(UriPartial.Authority)}/", address.ToString(), "[]", "");
        var roots = Root().Matches(html).Select((m, i) => $$"""{"type":"add","ssrComponentId":{{i + 1}},"marker":{{m.Groups[1].Value}}}""");
        await page.CallAsync(null, "UpdateRootComponents", $$"""{"batchId":1,"operations":[{{string.Join(',', roots)}}]}""", State().Match(html).Groups[1].Value);
        return page;
    }

    /// <summary>Waits for a button with such an attribute that was drawn in a later update than this, and gives the latest.</summary>
    public async Task<(int Update, DrawnElement Element)> DrawnAsync(string attribute, int after = 0)
    {
        using var late = new CancellationTokenSource(Longest);
        while (true)
        {
            Task news;
            lock (_drawn)
            {
                if (_drawn.FindLast(d => d.Update > after && d.Element.Attributes.ContainsKey(attribute)) is { Element: not null } found)
                {
                    return (found.Update, found.Element);
                }

                news = _news.Task;
            }

            if (await Task.WhenAny(news, _ended.Task).WaitAsync(late.Token) == _ended.Task)
            {
                throw new InvalidOperationException($"The page ended: {await _ended.Task}");
            }
        }
    }

    /// <summary>Presses a button as it was drawn then; it is not waited for.</summary>
    public Task PressAsync(DrawnElement button) => SendAsync(() => Press(button));

    /// <summary>Presses the button with this attribute as it is drawn now: no update is acknowledged between the look and the press.</summary>
    public Task PressAsync(string attribute) => SendAsync(() =>
    {
        lock (_drawn)
        {
            return Press(_drawn.FindLast(d => d.Element.Attributes.ContainsKey(attribute)).Element);
        }
    });

    /// <summary>As <see cref="PressAsync(DrawnElement)"/>; nothing when the page was ended.</summary>
    public async Task TryPressAsync(DrawnElement button)
    {
        try
        {
            await PressAsync(button);
        }
        catch (Exception gone) when (gone is WebSocketException or InvalidOperationException or ObjectDisposedException)
        {
            _ended.TrySetResult(gone.Message);
        }
    }

    /// <summary>Says goodbye, as a browser does whose tab is closed. A page that is only disposed of has lost its connection.</summary>
    public async Task CloseAsync()
    {
        using var goodbye = new MultipartFormDataContent { { new StringContent(await _secret.Task), "circuitId" } };
        (await _browser.PostAsync("/_blazor/disconnect", goodbye)).EnsureSuccessStatusCode();
    }

    public async ValueTask DisposeAsync()
    {
        if (_closing.IsCancellationRequested)
        {
            return;
        }

        await _closing.CancelAsync();
        _socket.Dispose();
        await _listening;
    }

    private byte[] Press(DrawnElement button) => HubMessage.Call(
        null, "BeginInvokeDotNetFromJS", Interlocked.Increment(ref _calls).ToString(CultureInfo.InvariantCulture), null, "DispatchEventAsync", _events,
        $$"""[{"eventHandlerId":{{button.Attributes["onclick"]}},"eventName":"click","eventFieldInfo":null},{"type":"click","detail":1,"button":0,"buttons":0}]""");

    private Task CallAsync(string? id, string method, params object?[] arguments) => SendAsync(() => HubMessage.Call(id, method, arguments));

    private async Task SendAsync(Func<byte[]> message)
    {
        await _sending.WaitAsync();
        try
        {
            await _socket.SendAsync(message(), WebSocketMessageType.Binary, true, _closing.Token);
        }
        finally
        {
            _sending.Release();
        }
    }

    private async Task ListenAsync()
    {
        var buffer = new byte[16_384];
        using var message = new MemoryStream();
        var (greeted, end) = (false, "the connection was closed");
        try
        {
            while (await _socket.ReceiveAsync(buffer, _closing.Token) is { MessageType: not WebSocketMessageType.Close } part)
            {
                message.Write(buffer, 0, part.Count);
                if (!part.EndOfMessage)
                {
                    continue;
                }

                // The first answer is a text to its end mark; more may follow it at once.
                var bytes = message.ToArray().AsMemory();
                if (!greeted)
                {
                    (greeted, bytes) = (true, bytes[(bytes.Span.IndexOf((byte)0x1e) + 1)..]);
                }

                foreach (var one in HubMessage.Read(bytes))
                {
                    end = await TakeAsync(one) ?? end;
                }

                message.SetLength(0);
            }
        }
        catch (Exception gone) when (gone is OperationCanceledException or WebSocketException or ObjectDisposedException)
        {
            // Closed by one of the two.
        }
        finally
        {
            _ended.TrySetResult(end);
        }
    }

    /// <summary>What the server says for a farewell; null for anything else.</summary>
    private async Task<string?> TakeAsync(IReadOnlyList<object?> message)
    {
        if (message is [7L, var reason, ..])
        {
            return $"{reason}";
        }

        if (message is [3L, _, _, _, string secret])
        {
            _secret.TrySetResult(secret);
            return null;
        }

        if (message is not [1L, _, _, string method, object?[] arguments, ..])
        {
            return null;
        }

        switch (method)
        {
            case "JS.RenderBatch":
                Draw((byte[])arguments[1]!);
                if (_acknowledges)
                {
                    await CallAsync(null, "OnRenderCompleted", arguments[0], null);
                }

                return null;
            case "JS.BeginInvokeJS":
                await AnswerAsync(arguments);
                return null;
            case "JS.Error":
                _ended.TrySetResult($"{arguments[0]}");
                return $"{arguments[0]}";
            default:
                return null;
        }
    }

    private void Draw(byte[] update)
    {
        TaskCompletionSource news;
        lock (_drawn)
        {
            Updates++;
            foreach (var (component, drawn, handler) in DrawnElements.Of(update))
            {
                if (drawn?.Attributes.ContainsKey("onclick") == true)
                {
                    _drawn.RemoveAll(d => d.Component == component && d.Element.Attributes.Keys.SequenceEqual(drawn.Attributes.Keys) && d.Element.Text == drawn.Text);
                    _drawn.Add((component, Updates, drawn));
                }
                else if (handler is not null && _drawn.FindLastIndex(d => d.Component == component) is >= 0 and var last)
                {
                    // Right for a component with one button at a time, as undo and redo of one edit; of others the latest alone is known.
                    var (_, since, element) = _drawn[last];
                    _drawn[last] = (component, since, element with { Attributes = new Dictionary<string, string>(element.Attributes) { ["onclick"] = handler } });
                }
            }

            (news, _news) = (_news, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        }

        news.SetResult();
    }

    /// <summary>Whatever a script is asked for, there is nothing; but where events go is remembered.</summary>
    private Task AnswerAsync(object?[] asked)
    {
        if (asked is [_, string function, string given, ..] && function.EndsWith("attachWebRendererInterop", StringComparison.Ordinal))
        {
            _events = JsonDocument.Parse(given).RootElement[1].GetProperty("__dotNetObject").GetInt64();
        }

        var id = (long)asked[0]!;
        return id == 0 ? Task.CompletedTask : CallAsync(null, "EndInvokeJSFromDotNet", id, true, $"[{id.ToString(CultureInfo.InvariantCulture)},true,{(asked is [_, _, _, 1L, ..] ? "{\"__jsObjectId\":1}" : "null")}]");
    }

    [GeneratedRegex("<!--Blazor:(\\{\"type\":\"server\".*?\\})-->")]
    private static partial Regex Root();

    [GeneratedRegex("<!--Blazor-Server-Component-State:(.*?)-->")]
    private static partial Regex State();
}
