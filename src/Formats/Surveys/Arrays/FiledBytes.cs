namespace SecondShore.Formats.Surveys.Arrays;

/// <summary>Looks into the bytes of a file, held to its length.</summary>
internal static class FiledBytes
{
    /// <summary>Some bytes.</summary>
    /// <exception cref="ArrayFault">They do not stand within the file.</exception>
    public static ReadOnlySpan<byte> Span(byte[] bytes, long at, long count) =>
        at < 0 || count < 0 || count > bytes.Length || at > bytes.Length - count ? throw ArrayFault.Damaged() : bytes.AsSpan((int)at, (int)count);
}
