using SecondShore.Host.Security;
using SecondShore.Host.Watch;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary><c>POST /api/pair</c>: a one-time code against a token.</summary>
internal static class PairingApi
{
    private static readonly int MaxNameLength = 60;

    public static void MapPairing(this RouteGroupBuilder api) => api.MapPost("/pair", async (PairRequest request, HttpContext context, DeviceStore devices, Meters meters) =>
    {
        string name = new([.. (request.Name ?? "").Where(c => !char.IsControl(c)).Take(MaxNameLength)]);
        if (string.IsNullOrWhiteSpace(name)) name = "device";
        (string Device, string Token)? paired = request.Code is { Length: < 40 } code
            ? await devices.PairAsync(code, name, context.Remote(), context.RequestAborted).ConfigureAwait(false) : null;
        if (paired is not { } grant)
        {
            meters.PairingRefused();
            return Replies.No(StatusCodes.Status403Forbidden, "The code is wrong, was used, or ran out. Ask for a new one at the host with 'pair'.");
        }

        return TypedResults.Json(new PairAnswer(grant.Device, grant.Token), RecordsJson.Default.PairAnswer);
    }).RequireRateLimiting(RateLimits.Pairing);
}
