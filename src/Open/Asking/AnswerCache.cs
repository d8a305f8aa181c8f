using System.Security.Cryptography;
using System.Text;

namespace SecondShore.Open.Asking;

/// <summary>Answers kept for a while, so that a service is not asked twice for the same.</summary>
public interface IAnswerCache
{
    /// <summary>An answer kept no longer than this ago; null when there is none.</summary>
    byte[]? Find(string question, DateTimeOffset notBefore);

    /// <summary>Keeps an answer. A cache that cannot be written is no fault.</summary>
    void Keep(string question, byte[] answer, DateTimeOffset now);
}

/// <summary>Keeps nothing.</summary>
public sealed class NoAnswerCache : IAnswerCache
{
    /// <inheritdoc/>
    public byte[]? Find(string question, DateTimeOffset notBefore) => null;

    /// <inheritdoc/>
    public void Keep(string question, byte[] answer, DateTimeOffset now)
    {
    }
}

/// <summary>Keeps answers as files named by a hash of the question.</summary>
/// <param name="folder">Where; it is made when first needed.</param>
public sealed class FolderAnswerCache(string folder) : IAnswerCache
{
    /// <inheritdoc/>
    public byte[]? Find(string question, DateTimeOffset notBefore)
    {
        FileInfo file = new(PathOf(question));
        try
        {
            return file.Exists && file.LastWriteTimeUtc >= notBefore.UtcDateTime ? File.ReadAllBytes(file.FullName) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public void Keep(string question, byte[] answer, DateTimeOffset now)
    {
        string path = PathOf(question), part = $"{path}.{Path.GetRandomFileName()}";
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

    private string PathOf(string question) =>
        Path.Combine(folder, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(question)))[..40] + ".answer");
}
