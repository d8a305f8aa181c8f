using System.Net;
using Microsoft.AspNetCore.HttpOverrides;

namespace SecondShore.Host.Security;

/// <summary>Takes a caller's address from a header only when a proxy named in the settings sends it, and only one step deep.</summary>
internal static class TrustedProxies
{
    public static void Apply(ForwardedHeadersOptions options, HostSettings settings)
    {
        options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
        options.ForwardLimit = 1;
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        foreach (IPAddress proxy in settings.Proxies) options.KnownProxies.Add(proxy);
    }
}
