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
        CancellationToken cancellation = default) =>
        Read(name, new MemoryStream(bytes, writable: false), problems, limits, cancellation);

    /// <summary>Unpacks a trip file from a seekable stream, which is closed; only the unpacked files are held in memory.</summary>
    /// <returns>The files; null when the file is refused, with the reason in <paramref name="problems"/>.</returns>
    public static MemoryFiles? Read(string name, Stream stream, ProblemLog problems, TripFileLimits? limits = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problems);
        try
        {
            using TripArchive archive = TripArchive.Open(stream, limits);
            Dictionary<string, byte[]> files = new(StringComparer.Ordinal);
            foreach (string file in archive.Names)
            {
                using MemoryStream copy = new();
                archive.Read(file, copy.Write, cancellation);
                files.Add(file, copy.ToArray());
            }

            return new MemoryFiles(name, files);
        }
        catch (TripRefusedException e)
        {
            problems.Error(name, e.Finding);
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
}
