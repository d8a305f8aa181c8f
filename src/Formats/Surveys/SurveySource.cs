using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;

namespace SecondShore.Formats.Surveys;

/// <summary>A survey file, its bytes, and the files that stand beside it.</summary>
public sealed class SurveySource
{
    private readonly ILakeFiles _files;

    /// <summary>Takes a file out of a set.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public SurveySource(ILakeFiles files, string name)
    {
        ArgumentNullException.ThrowIfNull(files);
        _files = files;
        Name = name;
        Bytes = files.Read(name);
    }

    /// <summary>The file's name.</summary>
    public string Name { get; }

    /// <summary>The file's bytes; not to be changed.</summary>
    public byte[] Bytes { get; }

    /// <summary>The name's ending in lower case, without its dot.</summary>
    public string Ending => FileNames.Ending(Name);

    /// <summary>The bytes of a companion of the same stem, such as <c>prj</c>; null when there is none.</summary>
    public byte[]? Companion(string ending)
    {
        string? name = _files.Find($"{FileNames.Stem(Name)}.{ending}") ?? _files.Find($"{Name}.{ending}");
        try
        {
            return name is null ? null : _files.Read(name);
        }
        catch (IOException)
        {
            return null;
        }
    }
}

/// <summary>What the lake folder knows that helps to understand a survey. Null where it knows nothing.</summary>
/// <param name="Position">A place on the lake.</param>
/// <param name="FullPoolElevationM">Elevation of full pool, m.</param>
/// <param name="MaxDepthM">Greatest depth, m.</param>
/// <param name="BelowFullPoolM">How far the surface lay below full pool when the survey was made, m.</param>
public sealed record SurveyContext(GeoPoint? Position, double? FullPoolElevationM, double? MaxDepthM, double? BelowFullPoolM)
{
    /// <summary>A longitude the lake should be near, from its time zone, degrees; null where there is none.</summary>
    public double? HintLonDeg { get; init; }

    /// <summary>Nothing is known.</summary>
    public static SurveyContext Nothing { get; } = new(null, null, null, null);
}
