using System.Security.Cryptography;
using System.Text;
using SecondShore.Host.Api;
using SecondShore.Store;

namespace SecondShore.Host.Security;

/// <summary>
/// The secret of one start of a host that asks for no pairing. Reaching its port is not enough: a web server in front passes everyone on
/// as if they were here, often without a mark. The printed address carries the secret and the browser keeps it as a strict cookie;
/// programs of this account read it from <c>host.key</c> in the data folder.
/// </summary>
internal sealed class StartKey : IDisposable
{
    /// <summary>The way in of the printed address.</summary>
    public static readonly string Path = "/api/open";

    private readonly string? _file;

    public StartKey(HostSettings settings)
    {
        Text = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(20));
        // Browsers tell hosts on other ports of one machine nothing apart: each start's cookie has a name of its own.
        CookieName = "second-shore-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(Text)))[..8];
        if (settings.Pairing) return;
        _file = FileIn(settings.DataFolder);
        try
        {
            PrivateFiles.MakeFolder(System.IO.Path.GetFullPath(settings.DataFolder));
            File.Delete(_file);
            PrivateFiles.Make(_file);
            File.WriteAllText(_file, Text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StorageException(StorageFault.ReadOnly, $"The host's key cannot be written to {_file}. Make its folder writable for the account that runs the host, or name another with --data.", e);
        }
    }

    /// <summary>The secret.</summary>
    public string Text { get; }

    /// <summary>Name of the cookie that carries it.</summary>
    public string CookieName { get; }

    /// <summary>The file that holds the secret while the host runs.</summary>
    public static string FileIn(string folder) => System.IO.Path.Combine(System.IO.Path.GetFullPath(folder), "host.key");

    /// <summary>Whether a request carries it.</summary>
    public bool IsIn(HttpRequest request)
    {
        string header = request.Headers.Authorization.ToString();
        return Matches(request.Cookies[CookieName]) || (header.StartsWith("Bearer ", StringComparison.Ordinal) && Matches(header["Bearer ".Length..].Trim()));
    }

    /// <summary>Whether a text is it; takes as long for every text of its length.</summary>
    public bool Matches(string? text) => text is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(text), Encoding.UTF8.GetBytes(Text));

    public void Dispose()
    {
        try
        {
            // Another host may have been started in this folder since.
            if (_file is not null && File.Exists(_file) && File.ReadAllText(_file) == Text) File.Delete(_file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It is of no use to anybody once the host has ended.
        }
    }
}

/// <summary><c>GET /api/open?key=</c>: the printed address. Leaves the secret with the browser and shows the app.</summary>
internal static class OpenApi
{
    public static void MapOpen(this RouteGroupBuilder api) => api.MapGet("/open", (string? key, HttpContext context, HostSettings settings, StartKey start) =>
    {
        if (!settings.Pairing)
        {
            if (!start.Matches(key)) return Replies.No(StatusCodes.Status403Forbidden, "This address is of an earlier start of the host. Open the one that it printed now.");
            context.Response.Cookies.Append(start.CookieName, start.Text, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", Secure = context.Request.IsHttps, IsEssential = true });
        }

        return Results.LocalRedirect("/");
    });
}
