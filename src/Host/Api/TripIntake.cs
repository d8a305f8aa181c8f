using System.Security.Cryptography;
using SecondShore.Formats.Files;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>
/// Takes a trip file in: first to a nameless file on disk, then read once to check every name, size and ratio and to hash each
/// file, and only when all of it is good a second time to keep it. Nothing of a refused trip file is kept.
/// </summary>
internal sealed class TripIntake(RecordStore records, FileStore files, TimeProvider clock)
{
    /// <summary>Takes the trip file in; files that are there already as they are make no new record.</summary>
    /// <exception cref="TripRefusedException">It is damaged or breaks a limit.</exception>
    public async Task<PushAnswer> TakeAsync(string lake, Writer writer, Stream body, CancellationToken cancel)
    {
        // Made for this account alone by the runtime where the system knows accounts, and gone when it is closed; where a file that is
        // open may lose its name it loses it now, so that nothing is left behind by a host that is killed.
        FileStream held = new(Path.GetTempFileName(), FileMode.Open, FileAccess.ReadWrite, FileShare.None, 81920, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        await using (held.ConfigureAwait(false))
        {
            if (!OperatingSystem.IsWindows()) File.Delete(held.Name);
            await body.CopyToAsync(held, cancel).ConfigureAwait(false);
            held.Position = 0;
            using TripArchive trip = TripArchive.Open(held);
            List<FileVersion> versions = [.. trip.Names.Select(name => Hash(trip, name, cancel))];
            trip.Rewind();
            foreach (FileVersion version in versions) await KeepAsync(lake, writer, trip, version, cancel).ConfigureAwait(false);
            return await NameAsync(lake, writer, versions, cancel).ConfigureAwait(false);
        }
    }

    private static FileVersion Hash(TripArchive trip, string name, CancellationToken cancel)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        long size = trip.Read(name, hash.AppendData, cancel);
        return new FileVersion(name, Convert.ToHexStringLower(hash.GetHashAndReset()), size);
    }

    private async Task KeepAsync(string lake, Writer writer, TripArchive trip, FileVersion version, CancellationToken cancel)
    {
        StoredFile? status = await files.StatusAsync(lake, version.Sha256, cancel).ConfigureAwait(false);
        if (status is { Complete: 1 }) return;
        long kept = status?.Stored ?? 0, at = 0;
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        using PieceQueue pieces = new(FileStore.PieceBytes, stop.Token);
        Task reading = Task.Run(() =>
        {
            try { trip.Read(version.Path, pieces.Add, stop.Token); }
            finally { pieces.Complete(); }
        }, stop.Token);
        try
        {
            await foreach (byte[] piece in pieces.AllAsync().ConfigureAwait(false))
            {
                // What an earlier try kept is stepped over.
                if (at + piece.Length > kept) kept = await files.AppendAsync(lake, version.Sha256, version.SizeBytes, Math.Max(at, kept), at >= kept ? piece : piece[(int)(kept - at)..], writer, cancel).ConfigureAwait(false);
                at += piece.Length;
            }
        }
        catch
        {
            await stop.CancelAsync().ConfigureAwait(false);
            await reading.ContinueWith(_ => { }, TaskScheduler.Default).ConfigureAwait(false);
            throw;
        }

        await reading.ConfigureAwait(false);
        if (version.SizeBytes == 0) await files.AppendAsync(lake, version.Sha256, 0, 0, [], writer, cancel).ConfigureAwait(false);
        await files.FinishAsync(lake, version.Sha256, cancel).ConfigureAwait(false);
    }

    private async Task<PushAnswer> NameAsync(string lake, Writer writer, List<FileVersion> versions, CancellationToken cancel)
    {
        IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)> standing = FileVersion.Standing(await records.FileRecordsAsync(lake, cancel).ConfigureAwait(false));
        DateTimeOffset now = clock.GetUtcNow();
        LakeRecord[] news = [.. versions.Where(v => !standing.TryGetValue(v.Path, out var old) || old.Version != v)
            .Select(v => v.ToRecord(now, standing.TryGetValue(v.Path, out var old) ? old.Record.Id : null))];
        PushAnswer answer = new(records.Epoch, 0, versions.Count - news.Length, []);
        foreach (LakeRecord[] batch in news.Chunk(RecordRules.MaxRecordsPerMessage))
        {
            PushAnswer part = await records.PushAsync(lake, writer, batch, cancel).ConfigureAwait(false);
            answer = answer with { Added = answer.Added + part.Added, Known = answer.Known + part.Known, Refused = [.. answer.Refused, .. part.Refused] };
        }

        return answer;
    }
}
