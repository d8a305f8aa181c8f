using System.Diagnostics;
using SecondShore.Host.Security;

namespace SecondShore.Host.Watch;

/// <summary>
/// One line for each call of the interface: method, the route's pattern, status, time and device. Neither headers nor bodies
/// nor the words of an address go into it, so no token, code or place can.
/// </summary>
internal sealed partial class RequestLog(RequestDelegate next, Quiet quiet, ILogger<RequestLog> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (!context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase))
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        long start = Stopwatch.GetTimestamp();
        try
        {
            await next(context).ConfigureAwait(false);
        }
        finally
        {
            string route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "/api";
            double tookMs = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            if (context.Response.StatusCode >= 500) quiet.Write(log, () => Line(log, LogLevel.Warning, context.Request.Method, route, context.Response.StatusCode, tookMs, context.Device()));
            else Line(log, LogLevel.Information, context.Request.Method, route, context.Response.StatusCode, tookMs, context.Device());
        }
    }

    [LoggerMessage(Message = "{Method} {Route} {Status} in {DurationMs:0.0} ms for {Device}")]
    private static partial void Line(ILogger log, LogLevel level, string method, string route, int status, double durationMs, string device);
}
