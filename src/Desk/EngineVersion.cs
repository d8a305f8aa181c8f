using SecondShore.Answers.Lake;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Desk;

/// <summary>Which engine gives the answers: what is kept of another is not shown for this one's.</summary>
public static class EngineVersion
{
    /// <summary>The same for the same build of everything that has a part in an answer, another for every other.</summary>
    public static string Text { get; } = string.Join('-',
        ((Type[])[typeof(Outlook), typeof(LakeFolder), typeof(Sentences), typeof(PreparedLake), typeof(LakeDesk)])
        .Select(type => type.Assembly.ManifestModule.ModuleVersionId.ToString("N")[..8]));
}
