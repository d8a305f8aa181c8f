using System.Text;

namespace SecondShore.Formats.Text;

/// <summary>Turns a file's bytes into text: UTF-8 or UTF-16 by its mark, else UTF-8, else Western 8-bit.</summary>
public static class TextDecoding
{
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Decodes bytes. Never throws.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="encodingName">Which encoding was taken, for messages.</param>
    public static string Decode(ReadOnlySpan<byte> bytes, out string encodingName)
    {
        if (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        else if (bytes.StartsWith<byte>([0xFF, 0xFE])) return Wide(Encoding.Unicode, bytes[2..], out encodingName);
        else if (bytes.StartsWith<byte>([0xFE, 0xFF])) return Wide(Encoding.BigEndianUnicode, bytes[2..], out encodingName);
        try
        {
            encodingName = "UTF-8";
            return StrictUtf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            encodingName = "Western 8-bit (not UTF-8)";
            return Encoding.Latin1.GetString(bytes);
        }
    }

    /// <summary>Whether bytes look like text: no zero byte or other control characters early on, unless marked UTF-16.</summary>
    public static bool LooksLikeText(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith<byte>([0xFF, 0xFE]) || bytes.StartsWith<byte>([0xFE, 0xFF])) return true;
        ReadOnlySpan<byte> head = bytes[..Math.Min(bytes.Length, 4096)];
        int odd = 0;
        foreach (byte b in head)
            if (b < 32 && b is not ((byte)'\t' or (byte)'\n' or (byte)'\r' or 12)) odd++;
        return odd == 0 || odd * 50 < head.Length;
    }

    /// <summary>The first characters of a text made fit to stand in a message: short, on one line, no control characters.</summary>
    public static string Excerpt(ReadOnlySpan<char> text, int longest = 40)
    {
        ReadOnlySpan<char> cut = text.Length > longest ? text[..longest] : text;
        StringBuilder result = new(cut.Length + 3);
        foreach (char c in cut) result.Append(char.IsControl(c) || char.IsSurrogate(c) ? '?' : c);
        return text.Length > longest ? result.Append("...").ToString() : result.ToString();
    }

    private static string Wide(Encoding encoding, ReadOnlySpan<byte> bytes, out string name)
    {
        name = "UTF-16";
        return encoding.GetString(bytes);
    }
}
