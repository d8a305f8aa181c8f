using SecondShore.Host.Security;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>Lakes at the host: those the device may see, and a new one.</summary>
internal static class LakesApi
{
    private static readonly int MaxNameLength = 120;

    public static void MapLakes(this RouteGroupBuilder api)
    {
        RouteGroupBuilder known = api.MapGroup("/lakes").RequireAuthorization();
        known.MapGet("", ListAsync);
        known.MapPut("/{lake}", AddAsync);
    }

    private static async Task<IResult> ListAsync(HttpContext context, RecordStore records, DeviceStore devices)
    {
        IReadOnlyList<LakeRow> all = await records.LakesAsync(context.RequestAborted).ConfigureAwait(false);
        IReadOnlyDictionary<string, bool>? rights = context.IsOwner() ? null : await devices.RightsAsync(context.Device(), context.RequestAborted).ConfigureAwait(false);
        IReadOnlyList<HostLake> seen = [.. all.Where(l => rights is null || rights.ContainsKey(l.Id)).Select(l => new HostLake(l.Id, l.Name, l.Records, rights is null || rights[l.Id]))];
        return Results.Json(seen, RecordsJson.Default.IReadOnlyListHostLake);
    }

    private static async Task<IResult> AddAsync(string lake, NewHostLake said, HttpContext context, RecordStore records, DeviceStore devices)
    {
        if (!LakeIds.IsWellFormed(lake)) return Replies.No(StatusCodes.Status400BadRequest, "A lake's id has 8 to 64 lower-case letters, digits and hyphens.");
        string name = new([.. (said.Name ?? "").Where(c => !char.IsControl(c)).Take(MaxNameLength)]);
        bool made = await records.AddLakeAsync(lake, name.Length > 0 ? name : lake, context.RequestAborted).ConfigureAwait(false);
        if (made && !context.IsOwner()) await devices.GrantAsync(context.Device(), lake, write: true, context.RequestAborted).ConfigureAwait(false);
        if (made) return Results.StatusCode(StatusCodes.Status201Created);
        return context.IsOwner() || await devices.MayAsync(context.Device(), lake, write: false, context.RequestAborted).ConfigureAwait(false)
            ? Results.NoContent()
            : Replies.No(StatusCodes.Status409Conflict, "This id is taken; make another.");
    }
}
