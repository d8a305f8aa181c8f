using System.IO.Compression;
using SecondShore.Records;

namespace SecondShore.Formats.Files;

/// <summary>A trip file breaks a limit or is damaged; the message is one sentence.</summary>
public sealed class TripRefusedException(string message, Exception? inner = null) : IOException(message, inner);

/// <summary>
/// A trip file read file by file, without holding it in memory. Names are checked before anything is unpacked, and sizes
/// and packing ratios while it is; nothing is written to disk here, so no name can lead outside.
/// </summary>
public sealed class TripArchive : IDisposable
{
    private readonly ZipArchive _zip;
    private readonly Dictionary<string, ZipArchiveEntry> _entries;
    private readonly TripFileLimits _limits;
    private long _total;

    private TripArchive(ZipArchive zip, Dictionary<string, ZipArchiveEntry> entries, TripFileLimits limits) =>
        (_zip, _entries, _limits) = (zip, entries, limits);

    /// <summary>Names of the files, in the order of the archive; a folder around all of them is left out.</summary>
    public IReadOnlyCollection<string> Names => _entries.Keys;

    /// <summary>Opens a trip file.</summary>
    /// <param name="stream">Its bytes, seekable; closed with the archive.</param>
    /// <param name="limits">How much it may hold.</param>
    /// <exception cref="TripRefusedException">It is damaged, empty, or holds too many files or one with a name that leads outside.</exception>
    public static TripArchive Open(Stream stream, TripFileLimits? limits = null)
    {
        limits ??= TripFileLimits.Default;
        ZipArchive? zip = null;
        try
        {
            ZipDirectory.RequireAtMost(stream, limits.MaxEntries);
            zip = new ZipArchive(stream, ZipArchiveMode.Read);
            return new TripArchive(zip, Named(zip), limits);
        }
        catch (Exception e) when (e is InvalidDataException or NotSupportedException or ArgumentException or OverflowException or (IOException and not TripRefusedException))
        {
            zip?.Dispose();
            throw Damaged(e);
        }
        catch (TripRefusedException)
        {
            zip?.Dispose();
            throw;
        }
    }

    /// <summary>Passes a file's bytes on, piece by piece.</summary>
    /// <returns>Its length.</returns>
    /// <exception cref="TripRefusedException">The file, or all together, is larger than the limits, or damaged.</exception>
    public long Read(string name, Action<ReadOnlySpan<byte>> take, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(take);
        ZipArchiveEntry entry = _entries[name];
        long most = Math.Min(_limits.MaxFileBytes, _limits.MaxTotalBytes - _total);
        long mostByRatio = Math.Max(1L << 20, (long)(entry.CompressedLength * _limits.MaxRatio));
        long length = 0;
        byte[] buffer = new byte[81920];
        try
        {
            using Stream stream = entry.Open();
            int got;
            while ((got = stream.Read(buffer)) > 0)
            {
                cancel.ThrowIfCancellationRequested();
                length += got;
                if (length > most) throw new TripRefusedException($"'{name}' is too large once unpacked; the trip file is refused.");
                if (length > mostByRatio) throw new TripRefusedException($"'{name}' unpacks to far more than its packed size, as a zip bomb does; the trip file is refused.");
                take(buffer.AsSpan(0, got));
            }
        }
        catch (Exception e) when (e is InvalidDataException or NotSupportedException or OverflowException or (IOException and not TripRefusedException))
        {
            throw Damaged(e);
        }

        _total += length;
        return length;
    }

    /// <summary>Begins to count unpacked bytes anew, to read all files a second time.</summary>
    public void Rewind() => _total = 0;

    /// <inheritdoc/>
    public void Dispose() => _zip.Dispose();

    private static TripRefusedException Damaged(Exception e) => new("the trip file is damaged and cannot be unpacked; copy or export it again.", e);

    private static Dictionary<string, ZipArchiveEntry> Named(ZipArchive zip)
    {
        string prefix = CommonFolder(zip);
        Dictionary<string, ZipArchiveEntry> entries = new(StringComparer.Ordinal);
        Dictionary<string, string> twins = new(StringComparer.Ordinal);
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            if (entry.FullName.EndsWith('/')) continue;
            string inner = entry.FullName[prefix.Length..];
            if (!FileNames.IsSafe(inner) || !FileNames.IsSafe(entry.FullName))
                throw new TripRefusedException($"the trip file holds a file named '{Printable(entry.FullName)}', which could lie outside the lake's folder or is no name on every system; the trip file is refused.");
            if (!twins.TryAdd(LakeFileNames.TwinKey(inner), inner) && twins[LakeFileNames.TwinKey(inner)] != inner)
                throw new TripRefusedException($"the trip file holds '{Printable(inner)}' and '{Printable(twins[LakeFileNames.TwinKey(inner)])}', which are one file on many systems; rename one of them.");
            if (!entries.TryAdd(inner, entry)) throw new TripRefusedException($"the trip file holds two files named '{inner}'; the trip file is refused.");
        }

        return entries.Count > 0 ? entries : throw new TripRefusedException("the trip file is empty.");
    }

    // A folder zipped from outside carries its own name in front of every file.
    private static string CommonFolder(ZipArchive zip)
    {
        string? prefix = null;
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            int slash = entry.FullName.IndexOf('/');
            if (slash <= 0) return "";
            string first = entry.FullName[..(slash + 1)];
            if (prefix is not null && prefix != first) return "";
            prefix = first;
        }

        return prefix is null or "climate/" or "survey/" or "../" or "./" ? "" : prefix;
    }

    private static string Printable(string text)
    {
        string cut = text.Length > 80 ? text[..80] + "..." : text;
        return string.Concat(cut.Select(c => char.IsControl(c) ? '?' : c));
    }
}
