using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace SecondShore.Desk.Graph;

/// <summary>Names a thing by what it holds: the same content has the same id, on every device and after every reload.</summary>
/// <param name="Hex">SHA-256 in small hexadecimal digits.</param>
internal readonly record struct ContentId(string Hex)
{
    /// <summary>The id of bytes.</summary>
    public static ContentId Of(ReadOnlySpan<byte> bytes) => new(Convert.ToHexStringLower(SHA256.HashData(bytes)));

    /// <summary>The id of words in their order; where one ends and the next begins counts.</summary>
    public static ContentId Of(params IEnumerable<string> words)
    {
        StringBuilder all = new();
        foreach (string word in words) all.Append(word.Length).Append(':').Append(word);
        return Of(Encoding.UTF8.GetBytes(all.ToString()));
    }

    /// <summary>A number as a word: equal numbers alone read alike.</summary>
    public static string Word(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    /// <summary>An instant as a word, with its offset: it decides local dates.</summary>
    public static string Word(DateTimeOffset at) => at.ToString("O", CultureInfo.InvariantCulture);

    /// <inheritdoc/>
    public override string ToString() => Hex;
}
