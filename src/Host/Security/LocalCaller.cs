using System.Net;

namespace SecondShore.Host.Security;

/// <summary>Whether a request comes from a program on this machine, and not through one from elsewhere.</summary>
internal static class LocalCaller
{
    /// <summary>
    /// Whether it does: the connection is loopback at both ends, the host asked for is called so (a name of another site that
    /// leads here is not), and nothing says that it was passed on by a proxy.
    /// </summary>
    public static bool Is(HttpContext context)
    {
        if (context.Connection.RemoteIpAddress is not { } remote || !IPAddress.IsLoopback(remote)) return false;
        if (context.Connection.LocalIpAddress is not { } local || !IPAddress.IsLoopback(local)) return false;
        IHeaderDictionary headers = context.Request.Headers;
        if (headers.ContainsKey("X-Forwarded-For") || headers.ContainsKey("Forwarded") || headers.ContainsKey("Via") || headers.ContainsKey("X-Forwarded-Host")) return false;
        return IsLocalName(context.Request.Host.Host);
    }

    private static bool IsLocalName(string host) => string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IPAddress.IsLoopback(address));
}
