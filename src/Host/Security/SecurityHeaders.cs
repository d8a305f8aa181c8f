namespace SecondShore.Host.Security;

/// <summary>
/// Headers on every answer: only our own scripts run (and WebAssembly may compile), nothing is framed, the position
/// sensor is ours alone, and no address is told to others.
/// </summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    /// <summary>The content policy. Styles may be inline because charts and the depth rule place things by style.</summary>
    public static readonly string ContentPolicy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; "
        + "img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(static state =>
        {
            IHeaderDictionary headers = ((HttpContext)state).Response.Headers;
            headers.ContentSecurityPolicy = ContentPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Permissions-Policy"] = "geolocation=(self), screen-wake-lock=(self), camera=(), microphone=()";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            HttpRequest request = ((HttpContext)state).Request;
            if (request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)) headers.CacheControl = "no-store";
            if (request.IsHttps) headers.StrictTransportSecurity = "max-age=31536000";
            return Task.CompletedTask;
        }, context);
        return next(context);
    }
}
