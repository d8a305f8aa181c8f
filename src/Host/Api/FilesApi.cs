using System.Globalization;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Timeouts;
using SecondShore.Formats.Files;
using SecondShore.Host.Security;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>Bytes of lakes' files, by their SHA-256: an upload goes on where it broke off, a download where the caller says.</summary>
internal static class FilesApi
{
    public static void MapFiles(this RouteGroupBuilder api)
    {
        RouteGroupBuilder files = api.MapGroup("/lakes/{lake}/files/{sha256}").RequireAuthorization();
        files.MapGet("/status", StatusAsync).AddEndpointFilter(new LakeRight(write: true));
        files.MapPut("", PutAsync).AddEndpointFilter(new LakeRight(write: true)).WithMetadata(new DisableRequestTimeoutAttribute());
        files.MapGet("", GetAsync).AddEndpointFilter(new LakeRight(write: false)).WithMetadata(new DisableRequestTimeoutAttribute());
    }

    private static async Task<IResult> StatusAsync(string lake, string sha256, HttpContext context, FileStore files) =>
        Results.Json(await files.StatusAsync(lake, sha256, context.RequestAborted).ConfigureAwait(false) ?? new StoredFile(0, 0, 0), ApiJson.Default.StoredFile);

    private static async Task<IResult> PutAsync(string lake, string sha256, long size, long? from, HttpContext context, FileStore files)
    {
        if (!RecordIds.IsWellFormed(sha256)) return Replies.No(StatusCodes.Status400BadRequest, "A file is named by its SHA-256 in 64 lower-case hexadecimal digits.");
        if (from < 0 || from > size) return Replies.No(StatusCodes.Status400BadRequest, "An upload goes on at a byte of the file: 'from' must lie between 0 and 'size'.");
        if (size < 0 || size > TripFileLimits.Default.MaxFileBytes) return Replies.No(StatusCodes.Status413PayloadTooLarge, "The file is larger than a lake's files may be.");
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit) limit.MaxRequestBodySize = size - (from ?? 0);
        long at = from ?? 0;
        if (size == 0) await files.AppendAsync(lake, sha256, 0, 0, [], context.Writer(), context.RequestAborted).ConfigureAwait(false);
        byte[] buffer = new byte[FileStore.PieceBytes];
        while (at < size)
        {
            int got = await context.Request.Body.ReadAtLeastAsync(buffer, buffer.Length, throwOnEndOfStream: false, context.RequestAborted).ConfigureAwait(false);
            if (got == 0) break;
            long kept = await files.AppendAsync(lake, sha256, size, at, buffer.AsSpan(0, got).ToArray(), context.Writer(), context.RequestAborted).ConfigureAwait(false);
            if (kept != at + got) return Results.Json(new StoredFile(size, kept, 0), ApiJson.Default.StoredFile, statusCode: StatusCodes.Status409Conflict);
            at = kept;
        }

        if (at < size) return Results.Json(new StoredFile(size, at, 0), ApiJson.Default.StoredFile, statusCode: StatusCodes.Status202Accepted);
        return await files.FinishAsync(lake, sha256, context.RequestAborted).ConfigureAwait(false)
            ? Results.Json(new StoredFile(size, size, 1), ApiJson.Default.StoredFile)
            : Replies.No(StatusCodes.Status422UnprocessableEntity, "The bytes are not those of this SHA-256: they were damaged on their way. Send the file again from the start.");
    }

    private static async Task<IResult> GetAsync(string lake, string sha256, long? from, HttpContext context, FileStore files, DeviceStore devices)
    {
        if (from < 0) return Replies.No(StatusCodes.Status400BadRequest, "A download begins at a byte of the file: 'from' must not be negative.");
        if (!RecordIds.IsWellFormed(sha256) || await files.StatusAsync(lake, sha256, context.RequestAborted).ConfigureAwait(false) is not { Complete: 1 } status)
            return Replies.No(StatusCodes.Status404NotFound, "The host has no such file of this lake, or not all of it yet.");
        long start = Math.Clamp(from ?? 0, 0, status.Size);
        context.Response.ContentType = "application/octet-stream";
        context.Response.ContentLength = status.Size - start;
        context.Response.Headers.ETag = string.Create(CultureInfo.InvariantCulture, $"\"{sha256}\"");
        await foreach (byte[] piece in files.PiecesAsync(lake, sha256, start, context.RequestAborted).ConfigureAwait(false))
        {
            if (!await devices.HoldsAsync(context, lake).ConfigureAwait(false)) break;
            await context.Response.Body.WriteAsync(piece, context.RequestAborted).ConfigureAwait(false);
        }

        return Results.Empty;
    }
}
