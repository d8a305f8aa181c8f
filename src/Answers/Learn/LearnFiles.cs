using System.Text;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Engine.Learn;
using SecondShore.Formats.Files;

namespace SecondShore.Answers.Learn;

/// <summary>What was learned, as files.</summary>
public static class LearnFiles
{
    /// <summary>Makes <c>learned.html</c>, <c>learned.json</c> and <c>catch-priors.json</c>, the beliefs to copy and change.</summary>
    public static ILakeFiles Of(LearnResult result, UnitSystem units) => new MemoryFiles("learned",
    [
        File("learned.html", LearnPage.Html(result, units)),
        File("learned.json", JsonSerializer.Serialize(LearnDocument.Of(result, []), AnswersJson.Default.LearnDocument) + "\n"),
        File("catch-priors.json", CatchPriors.DefaultText),
    ]);

    private static KeyValuePair<string, byte[]> File(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));
}
