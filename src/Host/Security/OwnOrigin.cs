using SecondShore.Host.Api;

namespace SecondShore.Host.Security;

/// <summary>
/// Refuses calls of the interface that a page of another site makes: where no account is needed, any page open in a browser on
/// this machine could otherwise write. Browsers say whose page asks; other programs send neither header. Apps served from elsewhere
/// are let through where they are named: they have nothing but their device's token, which no other page has.
/// </summary>
internal sealed class OwnOrigin(RequestDelegate next, HostSettings settings)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (!context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase) || IsOwn(context.Request) || IsNamed(context.Request)) return next(context);
        return Replies.Refuse(context, StatusCodes.Status403Forbidden, "A page of another site may not call this host. Open the app from the host itself.");
    }

    private bool IsNamed(HttpRequest request) => settings.Pairing && settings.Apps.Contains(request.Headers.Origin.ToString(), StringComparer.OrdinalIgnoreCase);

    private static bool IsOwn(HttpRequest request)
    {
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0 && site is not ("same-origin" or "none")) return false;
        string origin = request.Headers.Origin.ToString();
        return origin.Length == 0 || (Uri.TryCreate(origin, UriKind.Absolute, out Uri? address)
            && string.Equals(address.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase));
    }
}
