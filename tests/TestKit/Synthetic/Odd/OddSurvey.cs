using System.Text;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>A file of an awkward kind, with the truth behind it.</summary>
/// <param name="Name">Name of the file.</param>
/// <param name="Bytes">Its bytes.</param>
/// <param name="Lake">The lake it shows; null where nothing of the file can be a survey, so that it must be refused or asked about.</param>
public sealed record OddSurvey(string Name, byte[] Bytes, OddLake? Lake)
{
    /// <summary>A text file.</summary>
    public OddSurvey(string name, string text, OddLake? lake) : this(name, Encoding.UTF8.GetBytes(text), lake)
    {
    }

    /// <summary>Files beside it.</summary>
    public IReadOnlyDictionary<string, byte[]> Companions { get; init; } = new Dictionary<string, byte[]>();

    /// <summary>Whether an outline alone is what the file holds.</summary>
    public bool OnlyShore { get; init; }

    /// <summary>Whether it may be refused with its reason too.</summary>
    public bool MayBeRefused { get; init; }

    /// <summary>Whether it must not be read without a question.</summary>
    public bool MustAsk { get; init; }

    /// <summary>How far depths may lie from the truth, m: half a band for bands.</summary>
    public double ToleranceM { get; init; } = 0.35;

    /// <summary>Other lakes of the same file: a reading of one of them alone is right too.</summary>
    public IReadOnlyList<OddLake> Others { get; init; } = [];

    /// <summary>Its reading with what is set.</summary>
    public SurveyImport Read(SurveyOptions options)
    {
        MemoryFiles files = new MemoryFiles("odd").With(Name, Bytes);
        foreach ((string name, byte[] bytes) in Companions) files = files.With(name, bytes);
        return SurveyImporter.Read(new SurveySource(files, Name), options, SurveyContext.Nothing);
    }
}
