using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
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
        if (name.Length == 0) name = lake;
        if (context.IsOwner()) return await MadeAsync(lake).ConfigureAwait(false);
        if (await devices.RightsAsync(context.Device(), context.RequestAborted).ConfigureAwait(false) is { } rights && rights.TryGetValue(lake, out bool mayWrite)
            && await records.HasLakeAsync(lake, context.RequestAborted).ConfigureAwait(false)) return Lake(new HostLake(lake, name, 0, mayWrite), made: false);
        if (!context.IsMaker()) return Replies.No(StatusCodes.Status403Forbidden, "This device may use the lake it was paired for, and add none of its own. Ask at the host for a code without --lake.");
        return await MadeAsync(OwnId(context.Device(), lake)).ConfigureAwait(false);

        // Not stopped when the caller goes away: a lake that is half given would be nobody's.
        async Task<IResult> MadeAsync(string id)
        {
            bool made = await records.AddLakeAsync(id, name, context.Writer(), CancellationToken.None).ConfigureAwait(false);
            return Lake(new HostLake(id, name, 0, true), made);
        }
    }

    private static JsonHttpResult<HostLake> Lake(HostLake lake, bool made) =>
        TypedResults.Json(lake, RecordsJson.Default.HostLake, statusCode: made ? StatusCodes.Status201Created : StatusCodes.Status200OK);

    // A guest's id is its own: the same asked by another device is another lake, so that nobody learns which ids are taken.
    private static string OwnId(string device, string asked) =>
        "g" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"second-shore-lake\n{device}\n{asked}")))[..32];
}
