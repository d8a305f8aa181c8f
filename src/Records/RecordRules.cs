using System.Buffers;
using System.Globalization;
using System.Text.Json;

namespace SecondShore.Records;

/// <summary>What a record must be before it is kept, the same on every device and on the host.</summary>
public static class RecordRules
{
    /// <summary>Longest body, UTF-16 characters.</summary>
    public static readonly int MaxBodyLength = 16 * 1024;

    /// <summary>Deepest nesting of a body.</summary>
    public static readonly int MaxBodyDepth = 8;

    /// <summary>Most records in one message.</summary>
    public static readonly int MaxRecordsPerMessage = 500;

    private static readonly int MaxKindLength = 24;
    private static readonly SearchValues<char> KindLetters = SearchValues.Create("abcdefghijklmnopqrstuvwxyz-");

    /// <summary>Why a record is refused, in one sentence; null when it is taken.</summary>
    public static string? Refusal(LakeRecord? record)
    {
        if (record is null) return "the record is empty; send id, kind, at and body.";
        if (!IsKind(record.Kind)) return $"the kind must be 1 to {MaxKindLength} lower-case letters or hyphens.";
        if (!RecordTimes.TryRead(record.At, out _)) return "the time must be ISO-8601 in UTC with date and time, of the years 1900 to 2199, such as 2026-10-04T17:00:00.0000000Z.";
        if (record.Replaces is not null && !RecordIds.IsWellFormed(record.Replaces)) return "what it replaces must be named by an id of 64 hexadecimal digits.";
        if (record.Removed && record.Replaces is null) return "a record that takes another back must name it.";
        if (record.Body is null || record.Body.Length > MaxBodyLength) return string.Create(CultureInfo.InvariantCulture, $"the body must be a JSON object of at most {MaxBodyLength} characters.");
        if (!IsObject(record.Body)) return string.Create(CultureInfo.InvariantCulture, $"the body must be one JSON object, nested at most {MaxBodyDepth} deep, without the character U+0000.");
        if (!record.Removed && record.Kind == LakeRecord.FileKind && FileVersion.Of(record) is null)
            return string.Create(CultureInfo.InvariantCulture, $"a record of kind file must name path, sha256 and sizeBytes; the path is relative, of at most {LakeFileNames.MaxLength} characters and {LakeFileNames.MaxParts} parts, without '..', device names or characters that a system forbids.");
        if (!RecordIds.IsWellFormed(record.Id) || !RecordIds.Matches(record)) return "the id is not the one of the content; the record was changed or damaged on its way.";
        return null;
    }

    private static bool IsKind(string? kind) => kind is { Length: > 0 } && kind.Length <= MaxKindLength
        && !kind.AsSpan().ContainsAnyExcept(KindLetters);

    private static bool IsObject(string body)
    {
        if (body.Contains('\0', StringComparison.Ordinal)) return false;
        try
        {
            using JsonDocument document = JsonDocument.Parse(body, new JsonDocumentOptions { MaxDepth = MaxBodyDepth });
            return document.RootElement.ValueKind == JsonValueKind.Object;
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            return false;
        }
    }
}
