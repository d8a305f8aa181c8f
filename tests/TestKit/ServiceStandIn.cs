using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace SecondShore.TestKit;

/// <summary>What a stand-in answers.</summary>
/// <param name="Body">The body.</param>
/// <param name="Type">Its media type.</param>
/// <param name="Status">The status.</param>
public sealed record ServiceReply(byte[] Body, string Type = "application/json; charset=utf-8", int Status = 200)
{
    /// <summary>Further headers.</summary>
    public IReadOnlyDictionary<string, string> Headers { get; init; } = new Dictionary<string, string>();

    /// <summary>Whether the body comes a byte now and then and never ends.</summary>
    public bool Drips { get; init; }

    /// <summary>A text.</summary>
    public static ServiceReply Of(string text, string type = "application/json; charset=utf-8", int status = 200) =>
        new(Encoding.UTF8.GetBytes(text), type, status);

    /// <summary>A step to another address.</summary>
    public static ServiceReply Moved(string to, int status = 302) =>
        Of("", "text/plain", status) with { Headers = new Dictionary<string, string> { ["Location"] = to } };
}

/// <summary>A question as a stand-in got it.</summary>
/// <param name="Path">The address's path.</param>
/// <param name="Query">Its query, decoded, with its question mark.</param>
/// <param name="Form">The posted form, decoded; empty where nothing was posted.</param>
public sealed record ServiceQuestion(string Path, string Query, string Form)
{
    /// <summary>A value of the query; null without one.</summary>
    public string? Value(string key) => Query.TrimStart('?').Split('&').Select(p => p.Split('=', 2))
        .FirstOrDefault(p => string.Equals(p[0], key, StringComparison.OrdinalIgnoreCase))?.ElementAtOrDefault(1);
}

/// <summary>An open service of the tests' own on this machine: answers by a function, and by queued faults first.</summary>
public sealed class ServiceStandIn : IDisposable
{
    private readonly HttpListener _listener = new();
    private readonly CancellationTokenSource _end = new();
    private readonly Func<ServiceQuestion, ServiceReply> _answer;
    private readonly Task _serving;
    private int _atOnce;

    /// <summary>Starts it on a free port.</summary>
    /// <param name="answer">What it answers.</param>
    public ServiceStandIn(Func<ServiceQuestion, ServiceReply> answer)
    {
        _answer = answer;
        Address = new Uri($"http://127.0.0.1:{FreePort()}/");
        _listener.Prefixes.Add(Address.AbsoluteUri);
        _listener.Start();
        _serving = Task.Run(ServeAsync);
    }

    /// <summary>Its address.</summary>
    public Uri Address { get; }

    /// <summary>Questions in order.</summary>
    public ConcurrentQueue<ServiceQuestion> Asked { get; } = new();

    /// <summary>Answers to the next questions, whatever they are.</summary>
    public ConcurrentQueue<ServiceReply> Faults { get; } = new();

    /// <summary>The most questions that were under way at once.</summary>
    public int MostAtOnce { get; private set; }

    /// <summary>An address of its.</summary>
    public Uri At(string path) => new(Address, path);

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_end.IsCancellationRequested) return;
        _end.Cancel();
        _listener.Close();
        _serving.Wait(TimeSpan.FromSeconds(5));
    }

    private async Task ServeAsync()
    {
        while (_listener.IsListening)
        {
            try
            {
                _ = AnswerAsync(await _listener.GetContextAsync());
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task AnswerAsync(HttpListenerContext context)
    {
        MostAtOnce = Math.Max(MostAtOnce, Interlocked.Increment(ref _atOnce));
        try
        {
            using StreamReader reader = new(context.Request.InputStream, Encoding.UTF8);
            string form = Uri.UnescapeDataString((await reader.ReadToEndAsync()).Replace('+', ' '));
            ServiceQuestion question = new(context.Request.Url!.AbsolutePath, Uri.UnescapeDataString(context.Request.Url.Query), form);
            Asked.Enqueue(question);
            await SendAsync(context, Faults.TryDequeue(out ServiceReply? fault) ? fault : _answer(question));
        }
        catch (Exception e) when (e is HttpListenerException or IOException or ObjectDisposedException or OperationCanceledException)
        {
            // The client went away, or the test is over.
        }
        finally
        {
            Interlocked.Decrement(ref _atOnce);
        }
    }

    private async Task SendAsync(HttpListenerContext context, ServiceReply reply)
    {
        context.Response.StatusCode = reply.Status;
        context.Response.ContentType = reply.Type;
        // Open to pages of any site, as open services are.
        context.Response.Headers["Access-Control-Allow-Origin"] = "*";
        foreach ((string name, string value) in reply.Headers) context.Response.Headers[name] = value;
        for (int i = 0; reply.Drips; i++)
        {
            await context.Response.OutputStream.WriteAsync(reply.Body.AsMemory(i % reply.Body.Length, 1), _end.Token);
            await context.Response.OutputStream.FlushAsync(_end.Token);
            await Task.Delay(20, _end.Token);
        }

        context.Response.ContentLength64 = reply.Body.Length;
        await context.Response.OutputStream.WriteAsync(reply.Body);
        context.Response.Close();
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
