using System.Text.Json.Serialization;
using SecondShore.App.Store;
using SecondShore.App.Words;

namespace SecondShore.App.Compute.Views;

/// <summary>All that crosses between the page, the database and the engine's worker, read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true,
    NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals)]
[JsonSerializable(typeof(LakeView))]
[JsonSerializable(typeof(OutlookView))]
[JsonSerializable(typeof(LocaleInfo))]
[JsonSerializable(typeof(IReadOnlyList<LakeRow>))]
[JsonSerializable(typeof(IReadOnlyList<RecordRow>))]
[JsonSerializable(typeof(StorageUse))]
[JsonSerializable(typeof(ChartOptions))]
[JsonSerializable(typeof(ProfileChart))]
[JsonSerializable(typeof(SeasonChart))]
[JsonSerializable(typeof(WindChart))]
[JsonSerializable(typeof(LineChart))]
[JsonSerializable(typeof(HoursChart))]
[JsonSerializable(typeof(AskAbout))]
[JsonSerializable(typeof(ShoreView))]
[JsonSerializable(typeof(DayView))]
[JsonSerializable(typeof(DayMore))]
[JsonSerializable(typeof(HoldView))]
[JsonSerializable(typeof(TackleView))]
[JsonSerializable(typeof(WindView))]
[JsonSerializable(typeof(RigView))]
[JsonSerializable(typeof(InspectView))]
[JsonSerializable(typeof(WeatherView))]
[JsonSerializable(typeof(IReadOnlyList<HeldFile>))]
public sealed partial class ViewsJson : JsonSerializerContext;

/// <summary>What a question carries besides its verb.</summary>
/// <param name="At">The instant; null takes the lake's own.</param>
/// <param name="ThermoclineM">A depth to try, m; null takes the outlook's.</param>
/// <param name="PoolDropM">How far below full pool to try, m; null takes the day's.</param>
/// <param name="Metric">Whether sentences should read metric.</param>
/// <param name="Records">Readings and log entries kept on this device.</param>
/// <param name="Date">A day to try; null takes the outlook's.</param>
/// <param name="Rig">What to rig for.</param>
/// <param name="NewLake">What the user answered of a lake being taken in.</param>
/// <param name="Day">What is asked of a day.</param>
/// <param name="Wind">What is asked of the wind.</param>
/// <param name="Point">A place on the water whose hours are asked for.</param>
/// <param name="Language">Two letters of the language that sentences are said in.</param>
/// <param name="Weather">What is asked of the weather service.</param>
/// <param name="Tackle">What is put into the tackle box.</param>
/// <param name="Hold">A kept plan to be held against the water as it is known now.</param>
/// <param name="Learn">What is asked of the log.</param>
public sealed record AskAbout(DateTimeOffset? At = null, double? ThermoclineM = null, double? PoolDropM = null, bool Metric = false,
    IReadOnlyList<RecordRow>? Records = null, DateOnly? Date = null, NewLakeFacts? NewLake = null, RigAsk? Rig = null, DayAsk? Day = null,
    WindAsk? Wind = null, PointAsk? Point = null, string Language = "en", WeatherAsk? Weather = null, HoldAsk? Hold = null, TackleAsk? Tackle = null, LearnAsk? Learn = null)
{
    /// <summary>Units and language of the words.</summary>
    internal UnitSystem Units => (Metric ? UnitSystem.Metric : UnitSystem.Feet).In(Sentences.SpeechFor(Language)).In(ReadIn.App);
}
