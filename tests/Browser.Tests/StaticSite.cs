using System.Net;
using System.Net.Sockets;

namespace SecondShore.Browser.Tests;

/// <summary>A plain static server for the published app, with the content policy that the manual gives for such sites.</summary>
internal sealed class StaticSite : IDisposable
{
    private readonly HttpListener _listener = new();
    private readonly string _folder;
    private readonly Task _serving;

    /// <summary>Begins to serve a folder.</summary>
    /// <param name="folder">The published app's files.</param>
    /// <param name="connect">Addresses that the app may ask besides its own.</param>
    public StaticSite(string folder, params string[] connect)
    {
        _folder = Path.GetFullPath(folder);
        ContentPolicy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
            + $"connect-src 'self' {string.Join(' ', connect)}; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";
        _listener.Prefixes.Add(Address + "/");
        _listener.Start();
        _serving = Task.Run(ServeAsync);
    }

    /// <summary>Its address.</summary>
    public string Address { get; } = FreeAddress();

    private string ContentPolicy { get; }

    /// <summary>A free address of this machine.</summary>
    private static string FreeAddress()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return $"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}";
    }

    public void Dispose()
    {
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
        try
        {
            string path = Uri.UnescapeDataString(context.Request.Url!.AbsolutePath).TrimStart('/');
            string file = Path.GetFullPath(Path.Combine(_folder, path));
            if (!file.StartsWith(_folder, StringComparison.Ordinal) || !File.Exists(file)) file = Path.Combine(_folder, "index.html");
            context.Response.ContentType = Path.GetExtension(file) switch
            {
                ".html" => "text/html",
                ".js" => "text/javascript",
                ".css" => "text/css",
                ".json" => "application/json",
                ".wasm" => "application/wasm",
                ".svg" => "image/svg+xml",
                _ => "application/octet-stream",
            };
            context.Response.Headers["Content-Security-Policy"] = ContentPolicy;
            byte[] bytes = await File.ReadAllBytesAsync(file);
            context.Response.ContentLength64 = bytes.Length;
            await context.Response.OutputStream.WriteAsync(bytes);
            context.Response.Close();
        }
        catch (Exception e) when (e is HttpListenerException or IOException or ObjectDisposedException)
        {
            // The browser went away.
        }
    }
}
