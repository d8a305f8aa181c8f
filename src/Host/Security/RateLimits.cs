using System.Globalization;
using System.Threading.RateLimiting;
using SecondShore.Host.Api;

namespace SecondShore.Host.Security;

/// <summary>How often one device may ask, and one address may try to pair.</summary>
internal static class RateLimits
{
    public static readonly string Device = "device";
    public static readonly string Pairing = "pairing";

    public static void AddHostRateLimits(this IServiceCollection services, HostSettings settings) => services.AddRateLimiter(options =>
    {
        options.AddPolicy(Device, context => RateLimitPartition.GetTokenBucketLimiter(Key(context), _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = settings.RequestsPerSecond * 2,
            TokensPerPeriod = Math.Max(1, settings.RequestsPerSecond / 10),
            ReplenishmentPeriod = TimeSpan.FromMilliseconds(settings.RequestsPerSecond < 10 ? 1000 : 100),
            QueueLimit = 0,
        }));
        options.AddPolicy(Pairing, context => RateLimitPartition.GetFixedWindowLimiter("pair:" + CallerAddress.KeyOf(context.Connection.RemoteIpAddress), _ => new FixedWindowRateLimiterOptions
        {
            PermitLimit = settings.PairingsPerMinute,
            Window = TimeSpan.FromMinutes(1),
        }));
        options.OnRejected = (context, _) =>
        {
            int seconds = context.Lease.TryGetMetadata(MetadataName.RetryAfter, out TimeSpan after) ? Math.Max(1, (int)Math.Ceiling(after.TotalSeconds)) : 1;
            context.HttpContext.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            return new ValueTask(Replies.Refuse(context.HttpContext, StatusCodes.Status429TooManyRequests,
                string.Create(CultureInfo.InvariantCulture, $"Too many requests. Wait {seconds} s and go on.")));
        };
    });

    // A stranger counts by address, so that made-up tokens give no new allowance.
    private static string Key(HttpContext context) => context.User.Identity?.IsAuthenticated == true ? "device:" + context.Device() : "address:" + CallerAddress.KeyOf(context.Connection.RemoteIpAddress);
}
