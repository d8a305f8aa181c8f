using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace SecondShore.Desk.Questions;

/// <summary>A question to the desk. What crosses to the worker is one of these and nothing else.</summary>
/// <param name="Kind">Its name on the way; the worker fetches by it what an answer needs.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "question")]
[JsonDerivedType(typeof(OpenLake), "open")]
[JsonDerivedType(typeof(FindOutlook), "outlook")]
[JsonDerivedType(typeof(SliceShore), "slice")]
[JsonDerivedType(typeof(RankPlaces), "rank")]
[JsonDerivedType(typeof(ShorePapers), "shorePapers")]
[JsonDerivedType(typeof(BlowWind), "wind")]
[JsonDerivedType(typeof(LookAtPoint), "point")]
[JsonDerivedType(typeof(WindPapers), "windPapers")]
[JsonDerivedType(typeof(PointPapers), "pointPapers")]
[JsonDerivedType(typeof(PlanDay), "plan")]
[JsonDerivedType(typeof(PlanOthers), "others")]
[JsonDerivedType(typeof(HoldPlan), "hold")]
[JsonDerivedType(typeof(DayPapers), "papers")]
[JsonDerivedType(typeof(RigFor), "rig")]
[JsonDerivedType(typeof(LearnFrom), "learn")]
[JsonDerivedType(typeof(ChangeJig), "jig")]
[JsonDerivedType(typeof(ChangeTrailer), "trailer")]
[JsonDerivedType(typeof(TimeDrop), "drop")]
[JsonDerivedType(typeof(InspectFiles), "inspect")]
[JsonDerivedType(typeof(AdoptFiles), "adopt")]
[JsonDerivedType(typeof(UnpackTrip), "unpack")]
[JsonDerivedType(typeof(ExportTrip), "export")]
[JsonDerivedType(typeof(TakeWeather), "takeWeather")]
[JsonDerivedType(typeof(FetchWeather), "fetchWeather")]
public abstract record Question([property: JsonIgnore] string Kind)
{
    /// <summary>The question as it crosses.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, DeskJson.Default.Question);

    /// <summary>The question that crossed.</summary>
    public static Question OfJson(string json) => JsonSerializer.Deserialize(json, DeskJson.Default.Question)
        ?? throw new JsonException("The question is null.");

    /// <summary>Its answer as it crosses back.</summary>
    internal abstract string AnswerJson(LakeDesk desk);
}

/// <summary>A question with an answer of one type.</summary>
/// <typeparam name="TAnswer">The answer.</typeparam>
/// <param name="Kind">Its name on the way.</param>
/// <param name="AnswerType">How the answer is written and read.</param>
public abstract record Question<TAnswer>(string Kind, [property: JsonIgnore] JsonTypeInfo<TAnswer> AnswerType) : Question(Kind)
    where TAnswer : class
{
    /// <summary>The answer that crossed back.</summary>
    public TAnswer ReadAnswer(string json) => JsonSerializer.Deserialize(json, AnswerType) ?? throw new JsonException("The answer is null.");

    /// <summary>The answer as it crosses back.</summary>
    public string WriteAnswer(TAnswer answer) => JsonSerializer.Serialize(answer, AnswerType);

    /// <summary>The answer of a desk.</summary>
    internal abstract TAnswer AnsweredBy(LakeDesk desk);

    /// <inheritdoc/>
    internal sealed override string AnswerJson(LakeDesk desk) => WriteAnswer(AnsweredBy(desk));
}

/// <summary>Whose words the answers are in; said once, not with each question.</summary>
/// <param name="Metric">Whether sentences read metric.</param>
/// <param name="Language">Two letters of their language.</param>
public sealed record Reader(bool Metric = false, string Language = "en")
{
    /// <summary>Units and language of the words.</summary>
    internal UnitSystem Units => (Metric ? UnitSystem.Metric : UnitSystem.Feet).In(Sentences.SpeechFor(Language)).In(ReadIn.App);

    /// <summary>The reader as it crosses.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, DeskJson.Default.Reader);

    /// <summary>The reader that crossed.</summary>
    public static Reader OfJson(string json) => JsonSerializer.Deserialize(json, DeskJson.Default.Reader) ?? new Reader();
}
