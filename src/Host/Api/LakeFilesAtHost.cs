using System.Globalization;
using System.Security.Cryptography;
using SecondShore.Formats.Files;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>A lake's files as the host keeps them: versions named by records, bytes by hash.</summary>
internal sealed class LakeFilesAtHost(RecordStore records, FileStore files, TimeProvider clock)
{
    private static readonly long SmallBytes = 4 << 20;

    /// <summary>lake.json alone: where the lake lies, without reading a survey that anyone may have sent.</summary>
    public async Task<MemoryFiles> SmallAsync(string lake, CancellationToken cancel)
    {
        MemoryFiles read = new(lake);
        IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)> standing = await StandingAsync(lake, cancel).ConfigureAwait(false);
        if (!standing.TryGetValue("lake.json", out var found) || found.Version.SizeBytes > SmallBytes
            || await files.StatusAsync(lake, found.Version.Sha256, cancel).ConfigureAwait(false) is not { Complete: 1 }) return read;
        using MemoryStream bytes = new();
        await foreach (byte[] piece in files.PiecesAsync(lake, found.Version.Sha256, 0, cancel).ConfigureAwait(false)) bytes.Write(piece);
        return read.With("lake.json", bytes.ToArray());
    }

    /// <summary>Years of past weather that the lake has.</summary>
    public async Task<IReadOnlySet<int>> YearsAsync(string lake, CancellationToken cancel) =>
        (await StandingAsync(lake, cancel).ConfigureAwait(false)).Keys.Where(p => p.StartsWith("climate/", StringComparison.Ordinal))
            .Select(p => int.TryParse(FileNames.Stem(FileNames.Leaf(p)), NumberStyles.None, CultureInfo.InvariantCulture, out int year) ? year : 0).ToHashSet();

    /// <summary>Keeps files as new versions; on return they are on disk.</summary>
    public async Task KeepAsync(string lake, Writer writer, IEnumerable<(string Path, byte[] Bytes)> changed, CancellationToken cancel)
    {
        IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)> standing = await StandingAsync(lake, cancel).ConfigureAwait(false);
        List<LakeRecord> news = [];
        foreach ((string path, byte[] bytes) in changed)
        {
            FileVersion version = new(path, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.LongLength);
            bool had = standing.TryGetValue(path, out var old);
            if (had && old.Version == version) continue;
            long at = (await files.StatusAsync(lake, version.Sha256, cancel).ConfigureAwait(false))?.Stored ?? 0;
            while (at < bytes.Length || bytes.Length == 0)
            {
                at = await files.AppendAsync(lake, version.Sha256, bytes.LongLength, at, bytes[(int)at..Math.Min(bytes.Length, (int)at + FileStore.PieceBytes)], writer, cancel).ConfigureAwait(false);
                if (bytes.Length == 0) break;
            }

            await files.FinishAsync(lake, version.Sha256, cancel).ConfigureAwait(false);
            news.Add(version.ToRecord(clock.GetUtcNow(), had ? old.Record.Id : null));
        }

        foreach (LakeRecord[] batch in news.Chunk(RecordRules.MaxRecordsPerMessage)) await records.PushAsync(lake, writer, batch, cancel).ConfigureAwait(false);
    }

    private async Task<IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)>> StandingAsync(string lake, CancellationToken cancel) =>
        FileVersion.Standing(await records.FileRecordsAsync(lake, cancel).ConfigureAwait(false));
}
