using System.Globalization;
using System.IO.Compression;

namespace SecondShore.Formats.Files;

/// <summary>How much a trip file may hold: beyond it, it is refused before memory is spent.</summary>
/// <param name="MaxEntries">Most files.</param>
/// <param name="MaxFileBytes">Longest file once unpacked.</param>
/// <param name="MaxTotalBytes">Most bytes in all once unpacked.</param>
/// <param name="MaxRatio">Most bytes unpacked from one packed byte, for files over a megabyte.</param>
public sealed record TripFileLimits(int MaxEntries, long MaxFileBytes, long MaxTotalBytes, double MaxRatio)
{
    /// <summary>The limits used where none are given.</summary>
    public static TripFileLimits Default { get; } = new(4000, 512L << 20, 1L << 30, 400);
}

/// <summary>A lake folder as one zip file, to move it between laptop, phone and friend.</summary>
public static class TripFile
{
    private static readonly DateTimeOffset FixedStamp = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Whether bytes start as a zip file does.</summary>
    public static bool LooksLikeOne(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= 4 && bytes[0] == 'P' && bytes[1] == 'K' && ((bytes[2] == 3 && bytes[3] == 4) || (bytes[2] == 5 && bytes[3] == 6));

    /// <summary>Unpacks a trip file into memory. Nothing is written to disk, so no name can lead outside.</summary>
    /// <returns>The files; null when the file is refused, with the reason in <paramref name="problems"/>.</returns>
    public static MemoryFiles? Read(string name, byte[] bytes, ProblemLog problems, TripFileLimits? limits = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problems);
        limits ??= TripFileLimits.Default;
        try
        {
            using ZipArchive zip = new(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
            if (zip.Entries.Count > limits.MaxEntries)
            {
                problems.Error(name, string.Create(CultureInfo.InvariantCulture,
                    $"the trip file holds {zip.Entries.Count} files where at most {limits.MaxEntries} are taken."));
                return null;
            }

            return Unpack(name, zip, problems, limits, cancellation);
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException)
        {
            problems.Error(name, "the trip file is damaged and cannot be unpacked; copy or export it again.");
            return null;
        }
    }

    /// <summary>Packs files. The same files give the same bytes.</summary>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public static void Write(ILakeFiles files, Stream to)
    {
        ArgumentNullException.ThrowIfNull(files);
        using ZipArchive zip = new(to, ZipArchiveMode.Create, leaveOpen: true);
        foreach (LakeFileEntry file in files.Entries)
        {
            ZipArchiveEntry entry = zip.CreateEntry(file.Name, CompressionLevel.Optimal);
            entry.LastWriteTime = FixedStamp;
            using Stream stream = entry.Open();
            stream.Write(files.Read(file.Name));
        }
    }

    /// <summary>Packs files into bytes.</summary>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public static byte[] ToBytes(ILakeFiles files)
    {
        using MemoryStream stream = new();
        Write(files, stream);
        return stream.ToArray();
    }

    private static MemoryFiles? Unpack(string name, ZipArchive zip, ProblemLog problems, TripFileLimits limits, CancellationToken cancellation)
    {
        string prefix = CommonFolder(zip);
        Dictionary<string, byte[]> files = new(StringComparer.Ordinal);
        long total = 0;
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            cancellation.ThrowIfCancellationRequested();
            if (entry.FullName.EndsWith('/')) continue;
            string inner = entry.FullName[prefix.Length..];
            if (!FileNames.IsSafe(inner) || !FileNames.IsSafe(entry.FullName))
            {
                problems.Error(name, $"the trip file holds a file named '{Printable(entry.FullName)}', which would lie outside the lake's folder; the trip file is refused.");
                return null;
            }

            if (!TryUnpack(entry, limits, total, out byte[] bytes, out string? refusal))
            {
                problems.Error(name, $"'{inner}' {refusal}; the trip file is refused.");
                return null;
            }

            total += bytes.LongLength;
            if (!files.TryAdd(inner, bytes))
            {
                problems.Error(name, $"the trip file holds two files named '{inner}'; the trip file is refused.");
                return null;
            }
        }

        if (files.Count == 0) problems.Error(name, "the trip file is empty.");
        return files.Count == 0 ? null : new MemoryFiles(name, files);
    }

    private static bool TryUnpack(ZipArchiveEntry entry, TripFileLimits limits, long before, out byte[] bytes, out string? refusal)
    {
        bytes = [];
        refusal = null;
        long most = Math.Min(limits.MaxFileBytes, limits.MaxTotalBytes - before);
        long mostByRatio = Math.Max(1L << 20, (long)(entry.CompressedLength * limits.MaxRatio));
        using Stream stream = entry.Open();
        using MemoryStream copy = new();
        byte[] buffer = new byte[81920];
        int got;
        while ((got = stream.Read(buffer)) > 0)
        {
            copy.Write(buffer, 0, got);
            if (copy.Length > most) refusal = "is too large once unpacked";
            else if (copy.Length > mostByRatio) refusal = "unpacks to far more than its packed size, as a zip bomb does";
            if (refusal is not null) return false;
        }

        bytes = copy.ToArray();
        return true;
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
