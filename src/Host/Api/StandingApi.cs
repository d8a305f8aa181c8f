using Microsoft.AspNetCore.Authentication;
using SecondShore.Records;

namespace SecondShore.Host.Api;

/// <summary><c>GET /api/host</c>: whether devices must pair, and whether the asking one is known. Says nothing else to strangers.</summary>
internal static class StandingApi
{
    public static void MapHostStanding(this RouteGroupBuilder api) => api.MapGet("/host", async (HttpContext context, HostSettings settings) =>
    {
        AuthenticateResult who = await context.AuthenticateAsync().ConfigureAwait(false);
        return TypedResults.Json(new HostStanding(ProgramVersion.Text, settings.Pairing, who.Succeeded, who.Principal?.Identity?.Name), RecordsJson.Default.HostStanding);
    });
}
