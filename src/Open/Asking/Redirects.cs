using System.Net;

namespace SecondShore.Open.Asking;

/// <summary>
/// Where a service's answer sends one on to: few steps, never from a safe connection to an open one, and never from the world into this
/// machine or its network, which only a question that began there may reach.
/// </summary>
internal static class Redirects
{
    private const int MostHops = 3;

    /// <summary>The next address; null where the answer is no redirect.</summary>
    public static Uri? Next(HttpResponseMessage response, Uri at) =>
        (int)response.StatusCode is 301 or 302 or 303 or 307 or 308 && response.Headers.Location is { } to
            ? to.IsAbsoluteUri ? to : new Uri(at, to)
            : null;

    /// <summary>The next address where it may be followed.</summary>
    /// <exception cref="OpenException">It may not.</exception>
    public static Uri Checked(Ask ask, Uri from, Uri to, int hop)
    {
        string host = ask.Address.Host;
        // What was posted is not sent to somebody who was not named.
        if (ask.Form is not null) throw new OpenException($"{host} has moved to {Short(to)}; nothing was sent there. {ask.Otherwise}");
        if (hop >= MostHops) throw new OpenException($"{host} sends the question on and on. {ask.Otherwise}");
        bool web = to.Scheme == Uri.UriSchemeHttps || (to.Scheme == Uri.UriSchemeHttp && from.Scheme == Uri.UriSchemeHttp);
        if (!web || to.UserInfo.Length > 0 || (IsNear(to) && !IsNear(ask.Address)))
            throw new OpenException($"{host} sends the question to {Short(to)}, where it is not followed. {ask.Otherwise}");
        return to;
    }

    /// <summary>Whether an address names this machine or a network of its own.</summary>
    public static bool IsNear(Uri address)
    {
        if (address.IsLoopback || address.Host.EndsWith(".localhost", StringComparison.OrdinalIgnoreCase)) return true;
        if (!IPAddress.TryParse(address.DnsSafeHost, out IPAddress? ip)) return !address.Host.Contains('.');
        if (ip.IsIPv4MappedToIPv6) ip = ip.MapToIPv4();
        if (IPAddress.IsLoopback(ip) || ip.Equals(IPAddress.Any) || ip.Equals(IPAddress.IPv6Any)) return true;
        if (ip.IsIPv6LinkLocal || ip.IsIPv6UniqueLocal || ip.IsIPv6SiteLocal) return true;
        byte[] b = ip.GetAddressBytes();
        return b.Length == 4 && (b[0] is 0 or 10 or 127 || (b[0] == 172 && b[1] is >= 16 and < 32) || (b[0] == 192 && b[1] == 168)
            || (b[0] == 169 && b[1] == 254) || (b[0] == 100 && b[1] is >= 64 and < 128));
    }

    private static string Short(Uri to) => ServiceText.Plain(to.GetLeftPart(UriPartial.Authority), 80);
}
