using System.Globalization;
using SecondShore.Host.Security;
using SecondShore.Host.Watch;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary><c>POST /api/pair</c>: a one-time code against a token.</summary>
internal static class PairingApi
{
    private static readonly int MaxNameLength = 60;

    public static void MapPairing(this RouteGroupBuilder api) => api.MapPost("/pair", PairAsync).RequireRateLimiting(RateLimits.Pairing);

    private static async Task<IResult> PairAsync(PairRequest request, HttpContext context, DeviceStore devices, PairingWaits waits, Meters meters)
    {
        if (waits.Of(context.Connection.RemoteIpAddress) is { Ticks: > 0 } wait)
        {
            int seconds = (int)Math.Ceiling(wait.TotalSeconds);
            context.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            return Replies.No(StatusCodes.Status429TooManyRequests, string.Create(CultureInfo.InvariantCulture, $"Too many wrong codes came from this address. Wait {seconds} s and try again."));
        }

        string name = new([.. (request.Name ?? "").Where(c => !char.IsControl(c)).Take(MaxNameLength)]);
        if (string.IsNullOrWhiteSpace(name)) name = "device";
        (string Device, string Token)? paired = request.Code is { Length: < 40 } code
            ? await devices.PairAsync(code, name, context.Remote(), context.RequestAborted).ConfigureAwait(false) : null;
        if (paired is { } grant)
        {
            waits.Right(context.Connection.RemoteIpAddress);
            return TypedResults.Json(new PairAnswer(grant.Device, grant.Token), RecordsJson.Default.PairAnswer);
        }

        meters.PairingRefused();
        if (waits.Wrong(context.Connection.RemoteIpAddress) is { } times) await devices.NoteRefusedAsync(context.Remote(), times, CancellationToken.None).ConfigureAwait(false);
        return Replies.No(StatusCodes.Status403Forbidden, "The code is wrong, was used, or ran out. Ask for a new one at the host with 'pair'.");
    }
}
