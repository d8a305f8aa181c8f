using System.Text;
using System.Xml;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Surveys;

/// <summary>An element of a service's XML: its local name, its own text, its attributes by local name, its children.</summary>
internal sealed class XmlTree
{
    private const int MostElements = 300_000, MostDepth = 48;
    private readonly StringBuilder _text = new();

    private XmlTree(string name) => Name = name;

    public string Name { get; }

    public string Text => _text.ToString().Trim();

    public Dictionary<string, string> Attributes { get; } = new(StringComparer.Ordinal);

    public List<XmlTree> Children { get; } = [];

    /// <summary>Reads a document; null where it is no XML, declares a document type, or is deeper or larger than such answers
    /// are.</summary>
    public static XmlTree? Read(byte[] body)
    {
        XmlReaderSettings settings =
            new()
            {
                DtdProcessing = DtdProcessing.Prohibit,
                XmlResolver = null,
                IgnoreComments = true,
                IgnoreProcessingInstructions = true
            };
        Stack<XmlTree> open = new();
        XmlTree? root = null;
        int count = 0;
        try
        {
            using XmlReader reader = XmlReader.Create(new MemoryStream(body, writable: false), settings);
            while (reader.Read())
            {
                if (reader.NodeType == XmlNodeType.Element)
                {
                    if (++count > MostElements || open.Count >= MostDepth) return null;
                    XmlTree element = new(reader.LocalName);
                    bool empty = reader.IsEmptyElement;
                    while (reader.MoveToNextAttribute()) element.Attributes[reader.LocalName] = reader.Value;
                    if (open.TryPeek(out XmlTree? parent)) parent.Children.Add(element);
                    root ??= element;
                    if (!empty) open.Push(element);
                }
                else if (reader.NodeType == XmlNodeType.EndElement)
                {
                    open.Pop();
                }
                else if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && open.TryPeek(out XmlTree? around))
                {
                    around._text.Append(reader.Value);
                }
            }

            return root;
        }
        catch (XmlException)
        {
            return null;
        }
    }

    /// <summary>The first child of a name.</summary>
    public XmlTree? Child(string name) => Children.Find(c => c.Name == name);

    /// <summary>Every element below of a name.</summary>
    public IEnumerable<XmlTree> All(string name) => Children.SelectMany(c => c.Name == name ? c.All(name).Prepend(c) : c.All(name));

    /// <summary>A child's text, fit to be shown; empty without one.</summary>
    public string Said(string name, int most = 120) => ServiceText.Plain(Child(name)?.Text, most);

    /// <summary>Throws what a service says of an error.</summary>
    public void Refuse(Uri address)
    {
        if (Name is "ExceptionReport" or "ServiceExceptionReport")
            throw SurveyAsking.Said(address,
                ServiceText.Plain(All("ExceptionText").Concat(All("ServiceException")).FirstOrDefault()?.Text, 200));
    }
}
