using System.Buffers;
using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace SecondShore.Records;

/// <summary>
/// Ids of records: SHA-256 over a canonical form, in lower-case hexadecimal. The form is the line
/// <c>second-shore-record-1</c> and then each field as its length in bytes (four bytes, big-endian) and its UTF-8 text,
/// in the order kind, at, replaces, removed, body; an absent field has the length 2^32-1. Lengths make it unambiguous.
/// </summary>
/// <remarks>
/// The lake is not part of the form: a lake may be called by another id on each device, and its records stay the same.
/// What makes two equal bites of one second two records is a mark in the body, see <see cref="NewMark"/>.
/// </remarks>
public static class RecordIds
{
    private static readonly byte[] Form = Encoding.ASCII.GetBytes("second-shore-record-1\n");

    private static readonly SearchValues<char> HexDigits = SearchValues.Create("0123456789abcdef");

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Length of an id in characters.</summary>
    public static readonly int Length = 64;

    /// <summary>The id of a content.</summary>
    /// <exception cref="EncoderFallbackException">A text holds half of a surrogate pair and has no UTF-8 form.</exception>
    public static string Of(string kind, string at, string? replaces, bool removed, string body)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Form);
        Append(hash, kind);
        Append(hash, at);
        Append(hash, replaces);
        Append(hash, removed ? "1" : "0");
        Append(hash, body);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>Whether a record's id is the one of its content.</summary>
    public static bool Matches(LakeRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        try
        {
            return string.Equals(record.Id, Of(record.Kind, record.At, record.Replaces, record.Removed, record.Body), StringComparison.Ordinal);
        }
        catch (EncoderFallbackException)
        {
            return false;
        }
    }

    /// <summary>Whether a record came as it was made: every field is there and its id is the one of its content.</summary>
    public static bool IsWhole(LakeRecord? record) =>
        record is { Kind: not null, At: not null, Body: not null } && IsWellFormed(record.Id) && Matches(record);

    /// <summary>Whether a text has the shape of an id.</summary>
    public static bool IsWellFormed(string? id) => id is { Length: 64 } && !id.AsSpan().ContainsAnyExcept(HexDigits);

    /// <summary>A mark that no other device makes: 128 random bits, hexadecimal.</summary>
    public static string NewMark() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    private static void Append(IncrementalHash hash, string? text)
    {
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(length, uint.MaxValue);
        if (text is null)
        {
            hash.AppendData(length);
            return;
        }

        byte[] bytes = Strict.GetBytes(text);
        BinaryPrimitives.WriteUInt32BigEndian(length, (uint)bytes.Length);
        hash.AppendData(length);
        hash.AppendData(bytes);
    }
}
