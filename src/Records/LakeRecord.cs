using System.Globalization;

namespace SecondShore.Records;

/// <summary>
/// A reading, a log entry or a version of a lake's file. Never changed once made: a correction is a new record that names
/// the one it replaces. Its id is worked out from its content, so that every device and the host agree on it unasked.
/// </summary>
/// <param name="Id">Content-derived id, see <see cref="RecordIds"/>.</param>
/// <param name="Kind">What it is, lower-case letters and hyphens, such as <c>haze</c> or <c>fish</c>; <see cref="FileKind"/> for a file.</param>
/// <param name="At">When it happened by the clock of the device, ISO-8601 in UTC. Orders the view; never decides what is kept.</param>
/// <param name="Replaces">Id of the record it corrects or takes back; null for none.</param>
/// <param name="Removed">Whether it takes <paramref name="Replaces"/> back without putting anything in its place.</param>
/// <param name="Body">The entry, a JSON object kept letter by letter.</param>
public sealed record LakeRecord(string Id, string Kind, string At, string? Replaces, bool Removed, string Body)
{
    /// <summary>Kind of a record that names a version of a file of the lake.</summary>
    public static readonly string FileKind = "file";

    /// <summary>A record of this content, with its id.</summary>
    public static LakeRecord Make(string kind, DateTimeOffset at, string? replaces, bool removed, string body)
    {
        string stamp = at.UtcDateTime.ToString("O", CultureInfo.InvariantCulture);
        return new LakeRecord(RecordIds.Of(kind, stamp, replaces, removed, body), kind, stamp, replaces, removed, body);
    }
}
