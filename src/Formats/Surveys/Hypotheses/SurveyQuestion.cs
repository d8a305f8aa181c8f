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

/// <summary>One way to read the file: what to set, and how it is called.</summary>
/// <param name="Set">What to set for it.</param>
/// <param name="Label">In a few words; worded where it is shown.</param>
/// <param name="Place">Where the lake would lie; null when the choice does not say.</param>
/// <param name="Country">The country of that place; empty when not known.</param>
public sealed record SurveyChoice(SurveyOptions Set, Finding Label, GeoPoint? Place = null, string Country = "")
{
    /// <summary>A way whose name is said by its English form.</summary>
    public SurveyChoice(SurveyOptions set, FindingForm label, GeoPoint? place = null, string country = "")
        : this(set, label.ToFinding(), place, country)
    {
    }
}

/// <summary>The one question that parts the readings of a file that stand. Immutable.</summary>
/// <param name="File">The file.</param>
/// <param name="Kind">What is asked.</param>
/// <param name="Text">The question in one sentence.</param>
/// <param name="Choices">The readings, likeliest first.</param>
/// <param name="Key">The key under <c>survey</c> in lake.json that answers it freely, such as <c>crs</c>.</param>
public sealed record SurveyQuestion(string File, SurveyQuestionKind Kind, string Text, IReadOnlyList<SurveyChoice> Choices, string Key);
