using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Surveys;

/// <summary>What is asked about a survey file.</summary>
public enum SurveyQuestionKind
{
    /// <summary>Which columns are the position.</summary>
    Place,

    /// <summary>Which column or attribute is the depth.</summary>
    Depth,

    /// <summary>How the numbers of a position are written.</summary>
    Angles,

    /// <summary>Which coordinate system, that is: where the lake lies.</summary>
    Crs,

    /// <summary>Whether the place is meant: sea, pole, or the two numbers exchanged.</summary>
    Whereabouts,

    /// <summary>Which of the rows belong to the lake.</summary>
    Rows,

    /// <summary>What the numbers mean: depths, heights, and their unit.</summary>
    Meaning,

    /// <summary>How high the water stood, for elevations.</summary>
    Level,
}

/// <summary>One way to read the file: what to set, and how it is called. Immutable.</summary>
public sealed class SurveyChoice
{
    /// <summary>Makes a choice.</summary>
    public SurveyChoice(SurveyOptions set, FindingForm label, GeoPoint? place = null, string country = "") => (Set, Label, Place, Country) = (set, label.ToFinding(), place, country);

    /// <summary>What to set for it.</summary>
    public SurveyOptions Set { get; }

    /// <summary>In a few words.</summary>
    public Finding Label { get; }

    /// <summary>Where the lake would lie; null when the choice does not say.</summary>
    public GeoPoint? Place { get; }

    /// <summary>The country of that place; empty when not known.</summary>
    public string Country { get; }
}

/// <summary>The one question that parts the readings of a file that stand. Immutable.</summary>
public sealed class SurveyQuestion
{
    /// <summary>Makes a question.</summary>
    public SurveyQuestion(string file, SurveyQuestionKind kind, FindingForm text, IReadOnlyList<SurveyChoice> choices, string key) =>
        (File, Kind, Text, Choices, Key) = (file, kind, text.ToFinding(), choices, key);

    /// <summary>The file.</summary>
    public string File { get; }

    /// <summary>What is asked.</summary>
    public SurveyQuestionKind Kind { get; }

    /// <summary>The question in one sentence.</summary>
    public Finding Text { get; }

    /// <summary>The readings, likeliest first.</summary>
    public IReadOnlyList<SurveyChoice> Choices { get; }

    /// <summary>The key under <c>survey</c> in lake.json that answers it freely, such as <c>crs</c>.</summary>
    public string Key { get; }
}
