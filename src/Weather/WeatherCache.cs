using System.Security.Cryptography;
using System.Text;

namespace SecondShore.Weather;

/// <summary>Answers kept for a while, so that the service is not asked twice for the same.</summary>
public interface IWeatherCache
{
    /// <summary>An answer kept no longer than this ago; null when there is none.</summary>
    byte[]? Find(string query, DateTimeOffset notBefore);

    /// <summary>Keeps an answer. A cache that cannot be written is no fault.</summary>
    void Keep(string query, byte[] answer, DateTimeOffset now);
}

/// <summary>Keeps nothing.</summary>
public sealed class NoWeatherCache : IWeatherCache
{
    /// <inheritdoc/>
    public byte[]? Find(string query, DateTimeOffset notBefore) => null;

    /// <inheritdoc/>
    public void Keep(string query, byte[] answer, DateTimeOffset now)
    {
    }
}

/// <summary>Keeps answers as files named by a hash of the question.</summary>
public sealed class FolderWeatherCache(string folder) : IWeatherCache
{
    /// <inheritdoc/>
    public byte[]? Find(string query, DateTimeOffset notBefore)
    {
        try
        {
            FileInfo file = new(PathOf(query));
            return file.Exists && file.LastWriteTimeUtc >= notBefore.UtcDateTime ? File.ReadAllBytes(file.FullName) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public void Keep(string query, byte[] answer, DateTimeOffset now)
    {
        string path = PathOf(query), part = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(part, answer);
            File.SetLastWriteTimeUtc(part, now.UtcDateTime);
            File.Move(part, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Asked again next time.
        }
    }

    private string PathOf(string query) => Path.Combine(folder, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(query)))[..40] + ".json");
}
