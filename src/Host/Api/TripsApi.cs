using System.IO.Compression;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Timeouts;
using SecondShore.Formats.Files;
using SecondShore.Host.Security;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>A lake's files as a trip file, in and out, of any size the limits allow and without holding it in memory.</summary>
internal static class TripsApi
{
    private static readonly DateTimeOffset FixedStamp = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static void MapTrips(this RouteGroupBuilder api, Turns turns)
    {
        RouteGroupBuilder trips = api.MapGroup("/lakes/{lake}/trip").RequireAuthorization().WithMetadata(new DisableRequestTimeoutAttribute());
        trips.MapPost("", TakeAsync).AddEndpointFilter(new LakeRight(write: true)).AddEndpointFilter(turns.Trips);
        trips.MapGet("", GiveAsync).AddEndpointFilter(new LakeRight(write: false)).AddEndpointFilter(turns.Trips);
    }

    private static async Task<IResult> TakeAsync(string lake, HttpContext context, TripIntake intake)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit) limit.MaxRequestBodySize = ServerLimits.TripBytes;
        try
        {
            return TypedResults.Json(await intake.TakeAsync(lake, context.Writer(), context.Request.Body, context.RequestAborted).ConfigureAwait(false), RecordsJson.Default.PushAnswer);
        }
        catch (TripRefusedException e)
        {
            return Replies.No(StatusCodes.Status422UnprocessableEntity, char.ToUpperInvariant(e.Message[0]) + e.Message[1..]);
        }
    }

    private static async Task<IResult> GiveAsync(string lake, HttpContext context, RecordStore records, FileStore files, DeviceStore devices)
    {
        // Only what a trip needs is asked for: a lake's notes may be hundreds of megabytes.
        List<FileVersion> whole = [];
        HashSet<string> names = new(StringComparer.Ordinal);
        long bytes = 0;
        foreach ((_, FileVersion version) in FileVersion.Standing(await records.FileRecordsAsync(lake, context.RequestAborted).ConfigureAwait(false)).Values
            .OrderByDescending(v => v.Record.At, StringComparer.Ordinal).ThenByDescending(v => v.Record.Id, StringComparer.Ordinal))
        {
            if (await files.StatusAsync(lake, version.Sha256, context.RequestAborted).ConfigureAwait(false) is not { Complete: 1 } status) continue;
            // Two names that are one file on many systems: the later one goes, as among versions of one name.
            if (!names.Add(LakeFileNames.TwinKey(version.Path))) continue;
            whole.Add(version);
            bytes += status.Size;
        }

        if (whole.Count == 0) return Replies.No(StatusCodes.Status404NotFound, "The host has no files of this lake yet.");
        if (whole.Count > TripFileLimits.Default.MaxEntries || bytes > TripFileLimits.Default.MaxTotalBytes)
            return Replies.No(StatusCodes.Status422UnprocessableEntity, "This lake has more files than a trip file may hold, and no program would take it in. Keep the lake in step instead.");
        whole.Sort((a, b) => string.CompareOrdinal(a.Path, b.Path));
        context.Response.ContentType = "application/zip";
        context.Response.Headers.ContentDisposition = "attachment; filename=lake.zip";
        // The packer writes its headers at once and not later; the least speed of the server guards against clients that wait.
        if (context.Features.Get<IHttpBodyControlFeature>() is { } control) control.AllowSynchronousIO = true;
        using (ZipArchive zip = new(context.Response.Body, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (FileVersion version in whole)
            {
                ZipArchiveEntry entry = zip.CreateEntry(version.Path, CompressionLevel.Fastest);
                entry.LastWriteTime = FixedStamp;
                using Stream to = entry.Open();
                await foreach (byte[] piece in files.PiecesAsync(lake, version.Sha256, 0, context.RequestAborted).ConfigureAwait(false))
                {
                    if (!await devices.HoldsAsync(context, lake).ConfigureAwait(false)) return Results.Empty;
                    await to.WriteAsync(piece, context.RequestAborted).ConfigureAwait(false);
                }
            }
        }

        return Results.Empty;
    }
}
