using SecondShore.Store;

namespace SecondShore.Host.Security;

/// <summary>Asked between the pieces of a long download: a token that is revoked meanwhile ends it.</summary>
internal static class StillHolds
{
    /// <summary>Whether the right to the lake still holds; else the connection is ended, so that half a file cannot be taken for a whole one.</summary>
    public static async Task<bool> HoldsAsync(this DeviceStore devices, HttpContext context, string lake)
    {
        if (!context.RequestServices.GetRequiredService<HostSettings>().Pairing) return true;
        if (await devices.StillMayAsync(context.Device(), lake, context.RequestAborted).ConfigureAwait(false)) return true;
        context.Abort();
        return false;
    }
}
