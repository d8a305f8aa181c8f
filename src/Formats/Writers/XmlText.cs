using System.Globalization;
using System.Text;
using System.Xml;

namespace SecondShore.Formats.Writers;

/// <summary>Writes indented XML in UTF-8 with LF, its texts freed of characters that XML forbids.</summary>
internal static class XmlText
{
    public static string Write(Action<XmlWriter> body)
    {
        using MemoryStream stream = new();
        XmlWriterSettings settings = new() { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false) };
        using (XmlWriter xml = XmlWriter.Create(stream, settings)) body(xml);
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>An element with text; left out when the text is empty.</summary>
    public static void Known(this XmlWriter xml, string name, string text)
    {
        if (!string.IsNullOrEmpty(text)) xml.WriteElementString(name, Clean(text));
    }

    /// <summary>Degrees with at most eight decimals and no exponent.</summary>
    public static string Degrees(double deg) => deg.ToString("0.0#######", CultureInfo.InvariantCulture);

    public static string Clean(string text)
    {
        StringBuilder clean = new(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (XmlConvert.IsXmlChar(text[i])) clean.Append(text[i]);
            else if (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i])) clean.Append(text[i]).Append(text[++i]);
        }

        return clean.ToString();
    }
}
