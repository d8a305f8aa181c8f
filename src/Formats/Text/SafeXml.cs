using System.Xml;

namespace SecondShore.Formats.Text;

/// <summary>Opens XML so that nothing in it can reach outside or grow: no document type, no entities, bounded size.</summary>
internal static class SafeXml
{
    /// <summary>A forward reader over a file's bytes.</summary>
    public static XmlReader Open(byte[] bytes)
    {
        XmlReaderSettings settings = new()
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = 512L << 20,
            MaxCharactersFromEntities = 1024,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            CheckCharacters = false,
        };
        return XmlReader.Create(new MemoryStream(bytes, writable: false), settings);
    }

    private static int LongestProlog => 64 * 1024;

    /// <summary>Reports why a file could not be read to its end.</summary>
    /// <param name="file">The file's name.</param>
    /// <param name="bytes">The file.</param>
    /// <param name="e">Where the reader stopped.</param>
    /// <param name="log">Receives the problem.</param>
    /// <param name="some">Whether anything was read before.</param>
    /// <returns>Whether what was read before may be used.</returns>
    public static bool Tell(string file, byte[] bytes, XmlException e, ProblemLog log, bool some)
    {
        int? line = e.LineNumber > 0 ? e.LineNumber : null;
        if (DeclaresType(bytes))
        {
            log.Add(file, line, ProblemSeverity.Error, "the file declares a document type (DTD), which is not accepted; remove that line or export the file again.");
            return false;
        }

        if (some) log.Add(file, line, ProblemSeverity.Warning, "the file breaks off or is damaged here; what stands before is used.");
        else log.Add(file, line, ProblemSeverity.Error, "the file is not XML that can be read from here on; copy or export it again.");
        return some;
    }

    // The reader's message is for developers, and a published app has none. A document type stands before the first element, after
    // nothing but blanks, comments and instructions; the exception's words differ by platform, these signs do not.
    private static bool DeclaresType(byte[] bytes)
    {
        ReadOnlySpan<char> rest = TextDecoding.Decode(bytes.AsSpan(0, Math.Min(bytes.Length, LongestProlog)), out _);
        while (true)
        {
            rest = rest.TrimStart();
            string? end = rest.StartsWith("<!--") ? "-->" : rest.StartsWith("<?") ? "?>" : null;
            if (end is null) return rest.StartsWith("<!DOCTYPE", StringComparison.OrdinalIgnoreCase);
            int at = rest.IndexOf(end);
            if (at < 0) return false;
            rest = rest[(at + end.Length)..];
        }
    }
}
