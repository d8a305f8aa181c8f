using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace SecondShore.Host.Security;

/// <summary>How much one caller may hold of the server: small bodies, prompt headers, a least speed, a number of connections.</summary>
internal static class ServerLimits
{
    /// <summary>Longest body where an address does not say otherwise, bytes.</summary>
    public static readonly long BodyBytes = 4L << 20;

    /// <summary>Longest trip file, bytes.</summary>
    public static readonly long TripBytes = 1L << 30;

    public static void Apply(KestrelServerOptions options)
    {
        KestrelServerLimits limits = options.Limits;
        limits.MaxRequestBodySize = BodyBytes;
        limits.MaxRequestHeaderCount = 60;
        limits.MaxRequestHeadersTotalSize = 16 * 1024;
        limits.MaxRequestLineSize = 4 * 1024;
        limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        limits.KeepAliveTimeout = TimeSpan.FromSeconds(75);
        limits.MinRequestBodyDataRate = new MinDataRate(240, TimeSpan.FromSeconds(5));
        limits.MinResponseDataRate = new MinDataRate(240, TimeSpan.FromSeconds(5));
        limits.MaxConcurrentConnections = 2000;
        limits.Http2.MaxStreamsPerConnection = 50;
    }
}
