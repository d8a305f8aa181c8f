using System.Text.Encodings.Web;
using System.Text.Json;

namespace SecondShore.TestKit.Figures;

/// <summary>One number of a figure.</summary>
/// <param name="Name">Its name, unique over all figures.</param>
/// <param name="Value">As measured, unrounded.</param>
/// <param name="Unit">Unit; empty for a ratio.</param>
/// <param name="Against">Target or what it was measured against.</param>
/// <param name="Margin">How far it may stray before it counts as moved.</param>
/// <param name="OnPage">False for one of many of its kind, which only the file holds.</param>
public sealed record FigureValue(string Name, double Value, string Unit, string Against, FigureMargin Margin, bool OnPage = true);

/// <summary>The machine a figure was measured on.</summary>
/// <param name="Cores">Cores the system offers.</param>
/// <param name="Processor">The processor's name as the system tells it; null where it was not written down.</param>
public sealed record FigureMachine(int Cores, string? Processor);

/// <summary>A figure as measured last: <c>docs/figures/NAME.json</c>, from which docs/figures.md is made.</summary>
/// <param name="Name">Name of the figure and of the file.</param>
/// <param name="Claim">What it measures, in one sentence.</param>
/// <param name="Command">The command that measures it again.</param>
/// <param name="LeftOut">What was left out when numbers were learned for it, or that nothing was; null where nothing is learned.</param>
/// <param name="Date">Day of measuring, UTC.</param>
/// <param name="Commit">Short hash of the commit measured, with <c>+</c> when files were changed beside it; null where it was not written down.</param>
/// <param name="Machine">Where.</param>
/// <param name="Load">Load average over a minute as the measuring began; null where it was not written down.</param>
/// <param name="Note">What else to know, in words.</param>
/// <param name="Values">The numbers.</param>
public sealed record FigureFile(string Name, string Claim, string Command, string? LeftOut, DateOnly Date, string? Commit,
    FigureMachine Machine, double? Load, string? Note, IReadOnlyList<FigureValue> Values)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow,
    };

    /// <summary>The folder of figure files in this repository.</summary>
    public static string Folder { get; } = Path.Combine(SharedData.RepositoryRoot, "docs", "figures");

    /// <summary>Every figure file, by name.</summary>
    public static IReadOnlyList<FigureFile> ReadAll() =>
        [.. Directory.GetFiles(Folder, "*.json").Select(Read).OrderBy(f => f.Name, StringComparer.Ordinal)];

    /// <summary>The figure of a name as stored, or null when none was ever kept.</summary>
    public static FigureFile? Find(string name)
    {
        string path = PathOf(name);
        return File.Exists(path) ? Read(path) : null;
    }

    /// <summary>Keeps it as the latest of its name.</summary>
    public void Write()
    {
        Directory.CreateDirectory(Folder);
        File.WriteAllText(PathOf(Name), JsonSerializer.Serialize(this, Json).ReplaceLineEndings("\n") + "\n");
    }

    private static string PathOf(string name) => Path.Combine(Folder, name + ".json");

    private static FigureFile Read(string path)
    {
        FigureFile file = JsonSerializer.Deserialize<FigureFile>(File.ReadAllText(path), Json)
            ?? throw new InvalidDataException($"{path} holds no figure.");
        return file.Name == Path.GetFileNameWithoutExtension(path)
            ? file
            : throw new InvalidDataException($"{path} holds the figure '{file.Name}'; a file is called after its figure.");
    }
}
