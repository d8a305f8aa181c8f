using SecondShore.Host.Api;
using SecondShore.Store;

namespace SecondShore.Host.Security;

/// <summary>
/// Lets a device at a lake only with the right to it. A lake without the right and one that is not there give the same answer,
/// so that ids cannot be tried out.
/// </summary>
internal sealed class LakeRight(bool write) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        HttpContext http = context.HttpContext;
        string lake = http.Request.RouteValues["lake"] as string ?? "";
        if (!LakeIds.IsWellFormed(lake)) return Replies.No(StatusCodes.Status404NotFound, NoLake);
        if (!http.IsOwner() && !await http.RequestServices.GetRequiredService<DeviceStore>().MayAsync(http.Device(), lake, write, http.RequestAborted).ConfigureAwait(false))
            return Replies.No(StatusCodes.Status404NotFound, NoLake);
        return await http.RequestServices.GetRequiredService<RecordStore>().HasLakeAsync(lake, http.RequestAborted).ConfigureAwait(false)
            ? await next(context).ConfigureAwait(false)
            : Replies.No(StatusCodes.Status404NotFound, NoLake);
    }

    private static readonly string NoLake = "This host has no such lake, or this device has no right to it (a device that may only read cannot add).";
}
