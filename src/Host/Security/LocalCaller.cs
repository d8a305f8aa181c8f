using System.Net;

namespace SecondShore.Host.Security;

/// <summary>Whether a request comes from a program on this machine, and not through one from elsewhere.</summary>
internal static class LocalCaller
{
    // What proxies and tunnels usually add. None of them is proof of being local when it is missing: see StartKey.
    private static readonly string[] Marks =
    [
        "Forwarded", "Via", "X-Real-IP", "X-Client-IP", "X-Cluster-Client-IP", "X-Originating-IP", "X-Remote-IP", "X-Remote-Addr", "True-Client-IP",
        "CF-Connecting-IP", "CF-Ray", "Fastly-Client-IP", "X-Azure-ClientIP", "X-ProxyUser-Ip", "X-Original-Host", "X-Host", "X-Envoy-External-Address", "Tailscale-User-Login",
    ];

    /// <summary>
    /// Whether it does: the connection is loopback at both ends, the host asked for is called so (a name of another site that
    /// leads here is not), and nothing says that it was passed on by a proxy.
    /// </summary>
    public static bool Is(HttpContext context)
    {
        if (context.Connection.RemoteIpAddress is not { } remote || !IPAddress.IsLoopback(remote)) return false;
        if (context.Connection.LocalIpAddress is not { } local || !IPAddress.IsLoopback(local)) return false;
        return !IsPassedOn(context.Request.Headers) && IsLocalName(context.Request.Host.Host);
    }

    private static bool IsPassedOn(IHeaderDictionary headers) => Marks.Any(headers.ContainsKey)
        || headers.Keys.Any(k => k.StartsWith("X-Forwarded", StringComparison.OrdinalIgnoreCase));

    private static bool IsLocalName(string host) => string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IPAddress.IsLoopback(address));
}
