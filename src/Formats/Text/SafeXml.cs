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

    /// <summary>Reports why a file could not be read to its end.</summary>
    public static void Tell(string file, XmlException e, ProblemLog log, bool some)
    {
        bool dtd = e.Message.Contains("DTD", StringComparison.Ordinal);
        string why = dtd ? "the file declares a document type (DTD), which is not accepted; remove that line or export the file again."
            : some ? "the file breaks off or is damaged here; what stands before is used." : "the file is not XML that can be read from here on; copy or export it again.";
        log.Add(file, e.LineNumber > 0 ? e.LineNumber : null, some && !dtd ? ProblemSeverity.Warning : ProblemSeverity.Error, why);
    }
}
