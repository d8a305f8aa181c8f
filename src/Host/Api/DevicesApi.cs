using SecondShore.Host.Security;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>Devices and what happened with them, for the owner.</summary>
internal static class DevicesApi
{
    public static void MapDevices(this RouteGroupBuilder api)
    {
        RouteGroupBuilder own = api.MapGroup("").RequireAuthorization(Devices.OwnerPolicy);
        own.MapGet("/devices", async (HttpContext context, DeviceStore devices) => Results.Json(await devices.AllAsync(context.RequestAborted).ConfigureAwait(false), ApiJson.Default.IReadOnlyListDeviceRow));
        own.MapGet("/devices/audit", async (HttpContext context, DeviceStore devices) => Results.Json(await devices.AuditLogAsync(200, context.RequestAborted).ConfigureAwait(false), ApiJson.Default.IReadOnlyListAuditRow));
        own.MapDelete("/devices/{device}", async (string device, HttpContext context, DeviceStore devices) =>
            await devices.RevokeAsync(device, context.Device(), context.Remote(), context.RequestAborted).ConfigureAwait(false)
                ? Results.NoContent()
                : Replies.No(StatusCodes.Status404NotFound, "There is no such device, or its token was revoked before."));
    }
}
